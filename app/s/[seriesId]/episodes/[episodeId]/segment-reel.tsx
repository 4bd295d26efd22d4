'use client';

import Link from 'next/link';
import { useOptimistic, useState, useTransition, type DragEvent } from 'react';
import { GripVertical, TriangleAlert } from 'lucide-react';
import { Button, Refused, recordPath, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { RuntimeView, SegmentRow } from '@/lib/views';
import { moveSegmentAction } from '../actions';
import shared from '../episodes.module.css';
import { MoveControls } from '../move-controls';
import { isLate, retime } from '../retime';
import { RuntimeScale } from '../runtime-scale';
import styles from './segment-reel.module.css';

interface SegmentReelProps {
  readonly seriesId: string;
  readonly episodeId: string;
  readonly rows: readonly SegmentRow[];
  readonly loose: readonly SegmentRow[];
  readonly runtime: RuntimeView;
  readonly titles: number;
  /** When the recording of the episode is due. */
  readonly due: number;
  readonly otherEpisodes: readonly { readonly id: string; readonly name: string }[];
}

/** Where a segment goes: this episode (a place in it), another one, or none. */
interface Move {
  readonly row: SegmentRow;
  readonly to: string | null;
  /** Place in this episode, where it stays in it. */
  readonly place: number;
}

/** The segments of an episode, moved by hand, by keys or by choice. What it does to the runtime, and whether it is recorded in time, shows at once. */
export function SegmentReel({ seriesId, episodeId, rows, loose, runtime, titles, due, otherEpisodes }: SegmentReelProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const [dragged, setDragged] = useState<string | null>(null);
  const [shown, apply] = useOptimistic(rows, (before: readonly SegmentRow[], { row, to, place }: Move) => {
    const others = before.filter((each) => each.id !== row.id);
    return to === episodeId ? others.toSpliced(place, 0, row) : others;
  });
  const now = retime(runtime, shown, titles);
  const move = (row: SegmentRow, to: string | null, place: number) => {
    if (isPending) return;
    start(async () => {
      apply({ row, to, place });
      const before = to === episodeId ? (rows.filter((each) => each.id !== row.id)[place]?.id ?? null) : null;
      const outcome = await moveSegmentAction(seriesId, row.id, row.revision, to, before);
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  const drop = (event: DragEvent, place: number) => {
    event.preventDefault();
    const from = rows.findIndex((row) => row.id === dragged);
    const row = rows[from] ?? loose.find((each) => each.id === dragged);
    if (row !== undefined && from !== place) move(row, episodeId, place);
    setDragged(null);
  };
  /** Dragging is an extra beside the buttons. */
  const dragFrom = (row: SegmentRow) => ({ draggable: true, onDragStart: (event: DragEvent) => { event.dataTransfer.setData('text/plain', row.name); setDragged(row.id); } });
  const dropAt = (place: number) => ({ onDragOver: (event: DragEvent) => event.preventDefault(), onDrop: (event: DragEvent) => drop(event, place) });
  return (
    <UntilReady>
      <p className={shared.standing} aria-live="polite">
        {now.isInside ? null : <TriangleAlert size={18} aria-hidden />} {now.text}
      </p>
      <RuntimeScale runtime={now} />
      <Refused issues={issues} seriesId={seriesId} />
      {shown.length === 0 ? <p className={shared.soft}>No segment is in this episode yet.</p> : null}
      <ol className={styles.rows}>
        {shown.map((row, place) => (
          <li key={row.id} className={styles.row} {...dragFrom(row)} {...dropAt(place)}>
            <Segment seriesId={seriesId} row={row} late={isLate(row, due)} />
            <MoveControls name={row.name} place={place} count={shown.length} isPending={isPending} otherEpisodes={otherEpisodes} onPlace={(to) => move(row, episodeId, to)} onLeave={(to) => move(row, to, 0)} />
          </li>
        ))}
      </ol>
      {loose.length > 0 ? (
        <>
          <h3 className={styles.looseHead}>In no episode</h3>
          <ul className={styles.rows} aria-label="Segments in no episode">
            {loose.map((row) => (
              <li key={row.id} className={styles.row} {...dragFrom(row)}>
                <Segment seriesId={seriesId} row={row} late={false} />
                <div>
                  <Button onClick={() => move(row, episodeId, shown.length)} aria-disabled={isPending}>Put at the end<span className="visually-hidden">: {row.name}</span></Button>
                </div>
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </UntilReady>
  );
}

function Segment({ seriesId, row, late }: { readonly seriesId: string; readonly row: SegmentRow; readonly late: boolean }) {
  const href = recordPath(seriesId, 'segment', row.id);
  return (
    <>
      <GripVertical size={18} className={styles.grip} aria-hidden />
      <span className={styles.length}>{row.length} min</span>
      <div className={styles.words}>
        {href === null ? row.name : <Link href={href} prefetch={false} draggable={false}>{row.name}</Link>}
        <span className={shared.small}>
          {row.role}{row.isResult ? ', shows a result' : ''}{row.facts.length > 0 ? ` · ${row.facts.join(' · ')}` : ''}
        </span>
        {late ? <span className={shared.bad}><TriangleAlert size={15} aria-hidden /> recorded too late for this release</span> : null}
      </div>
    </>
  );
}

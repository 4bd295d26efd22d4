'use client';

import Link from 'next/link';
import { useOptimistic, useState, useTransition, type DragEvent, type ReactNode } from 'react';
import { GripVertical, TriangleAlert } from 'lucide-react';
import { episodePath, Refused, UntilReady, useNotices } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { BoardRow, ReelView } from '@/lib/views';
import { moveSegmentAction } from './actions';
import styles from './episodes.module.css';
import { MoveControls } from './move-controls';
import { isLate, retime } from './retime';
import { RuntimeScale } from './runtime-scale';
import board from './shelf.module.css';
import { StandingSign } from './standing-sign';

interface ShelfProps {
  readonly seriesId: string;
  readonly reels: readonly ReelView[];
  /** Segments in no episode. */
  readonly loose: readonly BoardRow[];
  readonly titles: number;
}

/** Where a segment goes: into an episode or none, in front of another or at the end. */
interface Move {
  readonly row: BoardRow;
  readonly to: string | null;
  readonly beforeId: string | null;
}

interface Shown {
  readonly reels: readonly ReelView[];
  readonly loose: readonly BoardRow[];
}

function put(rows: readonly BoardRow[], { row, beforeId }: Move, isHere: boolean): readonly BoardRow[] {
  const others = rows.filter((each) => each.id !== row.id);
  if (!isHere) return others.length === rows.length ? rows : others;
  const at = others.findIndex((each) => each.id === beforeId);
  return others.toSpliced(at < 0 ? others.length : at, 0, row);
}

/** Everything as it will be: runtimes and dates follow the segments at once. */
function applyMove({ reels, loose }: Shown, move: Move, titles: number): Shown {
  return {
    reels: reels.map((reel) => {
      const rows = put(reel.rows, move, move.to === reel.id);
      return rows === reel.rows ? reel : { ...reel, rows, segments: rows.length, runtime: retime(reel.runtime, rows, titles) };
    }),
    loose: put(loose, move, move.to === null),
  };
}

/** The episodes with their segments, which are dragged from one to another, or moved with buttons and a choice. */
export function Shelf({ seriesId, reels, loose, titles }: ShelfProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const [dragged, setDragged] = useState<BoardRow | null>(null);
  const [shown, apply] = useOptimistic({ reels, loose }, (before: Shown, move: Move) => applyMove(before, move, titles));
  const move = (row: BoardRow, to: string | null, beforeId: string | null) => {
    if (isPending) return;
    start(async () => {
      apply({ row, to, beforeId });
      const outcome = await moveSegmentAction(seriesId, row.id, row.revision, to, beforeId);
      setIssues(outcome.ok ? [] : outcome.issues);
      if (outcome.ok) sayChange(seriesId, outcome.saved);
    });
  };
  const dropAt = (to: string | null, beforeId: string | null) => ({
    onDragOver: (event: DragEvent) => event.preventDefault(),
    onDrop: (event: DragEvent) => {
      event.preventDefault();
      event.stopPropagation();
      if (dragged !== null && dragged.id !== beforeId) move(dragged, to, beforeId);
      setDragged(null);
    },
  });
  const list = (rows: readonly BoardRow[], reel: ReelView | null) => (
    <Rows rows={rows} reel={reel} reels={shown.reels} isPending={isPending} onMove={move} dropAt={dropAt} onDrag={setDragged} />
  );
  return (
    <UntilReady>
      <section aria-labelledby="shelf-head">
        <h2 id="shelf-head" className="visually-hidden">The shelf</h2>
        <Refused issues={issues} seriesId={seriesId} />
        <ol className={styles.shelf}>
          {shown.reels.map((reel) => (
            <li key={reel.id} className={styles.reel} {...dropAt(reel.id, null)}><Reel reel={reel} seriesId={seriesId}>{list(reel.rows, reel)}</Reel></li>
          ))}
        </ol>
        {shown.loose.length > 0 ? (
          <div className={board.loose} {...dropAt(null, null)}>
            <h3>In no episode</h3>
            {list(shown.loose, null)}
          </div>
        ) : null}
      </section>
    </UntilReady>
  );
}

/** The more is on it, the fuller the reel. */
function Spool({ reel }: { readonly reel: ReelView }) {
  const full = Math.min(1, reel.runtime.minutes / reel.runtime.target);
  const radius = 12 + 12 * Math.sqrt(full);
  return (
    <svg viewBox="0 0 56 56" width="56" height="56" className={styles.spool} aria-hidden>
      <circle cx="28" cy="28" r="26" className={styles.rim} />
      <circle cx="28" cy="28" r={radius} className={styles.film} />
      <circle cx="28" cy="28" r="12" className={styles.hub} />
      <text x="28" y="33" textAnchor="middle" className={styles.number}>{reel.number}</text>
    </svg>
  );
}

function Reel({ reel, seriesId, children }: { readonly reel: ReelView; readonly seriesId: string; readonly children: ReactNode }) {
  const late = reel.rows.filter((row) => reel.stage === 'planned' && isLate(row, reel.due)).length;
  return (
    <article>
      <header className={styles.reelHead}>
        <Spool reel={reel} />
        <div>
          <h3><Link href={episodePath(seriesId, reel.id)} prefetch={false}>{reel.name}</Link></h3>
          <p className={styles.soft}>
            Out {reel.release} · {reel.stage}{reel.isEvergreen ? ' · fits any week' : ''}
          </p>
        </div>
      </header>
      <RuntimeScale runtime={reel.runtime} />
      <p className={styles.small}>
        {reel.runtime.text} · {reel.results} {reel.results === 1 ? 'result' : 'results'}
      </p>
      {late > 0 ? <p className={styles.bad}><TriangleAlert size={15} aria-hidden /> {late} {late === 1 ? 'segment is' : 'segments are'} recorded after {reel.shootDue}, when it is due</p> : null}
      {reel.stage === 'planned' ? (
        <>
          <StandingSign standing={reel.standing} />
          <p className={styles.small}>{reel.standing.text}</p>
        </>
      ) : null}
      {reel.open.length > 0 ? (
        <ul className={styles.open}>
          {reel.open.map((text) => <li key={text}><TriangleAlert size={15} aria-hidden /> {text}</li>)}
        </ul>
      ) : null}
      {reel.segments > 0 ? (
        <details className={board.fold}>
          <summary>{reel.segments} {reel.segments === 1 ? 'segment' : 'segments'}<span className="visually-hidden"> of {reel.name}</span></summary>
          {children}
        </details>
      ) : null}
    </article>
  );
}

interface RowsProps {
  readonly rows: readonly BoardRow[];
  /** null: in no episode. */
  readonly reel: ReelView | null;
  readonly reels: readonly ReelView[];
  readonly isPending: boolean;
  readonly onMove: (row: BoardRow, to: string | null, beforeId: string | null) => void;
  readonly dropAt: (to: string | null, beforeId: string | null) => object;
  readonly onDrag: (row: BoardRow) => void;
}

/** Segments in their order. Dragging is an extra beside the buttons. */
function Rows({ rows, reel, reels, isPending, onMove, dropAt, onDrag }: RowsProps) {
  const to = reel?.id ?? null;
  const others = reels.filter(({ id }) => id !== to).map(({ id, name }) => ({ id, name }));
  const dragFrom = (row: BoardRow) => ({ draggable: true, onDragStart: (event: DragEvent) => { event.dataTransfer.setData('text/plain', row.name); onDrag(row); } });
  const shift = (row: BoardRow, place: number) => onMove(row, to, rows.filter(({ id }) => id !== row.id)[place]?.id ?? null);
  return (
    <ol className={board.rows}>
      {rows.map((row, place) => (
        <li key={row.id} className={board.row} {...dragFrom(row)} {...dropAt(to, row.id)}>
          <span className={board.name}><GripVertical size={16} aria-hidden /> {row.name} <span className={styles.soft}>{row.length} min{row.ready === '' ? '' : `, ${row.ready}`}</span></span>
          {reel !== null && reel.stage === 'planned' && isLate(row, reel.due) ? <span className={styles.bad}><TriangleAlert size={15} aria-hidden /> too late for this release</span> : null}
          <MoveControls name={row.name} place={place} count={rows.length} isPending={isPending} otherEpisodes={others} hasNone={reel !== null} onPlace={(next) => shift(row, next)} onLeave={(next) => onMove(row, next, null)} />
        </li>
      ))}
    </ol>
  );
}

'use client';

import { useEffect, useRef, useState, useTransition, type DragEvent } from 'react';
import { Button, Refused, TextField, UntilReady, useNotices } from '@/app/_ui';
import { removeRecordAction, reorderRecordsAction } from '@/app/_actions/records';
import type { Outcome } from '@/app/_actions/outcome';
import type { Issue } from '@/lib/result';
import type { KindWords, RecordRow } from '@/lib/views';
import { RecordItem } from './record-item';
import styles from './record-list.module.css';

interface RecordListProps {
  readonly seriesId: string;
  readonly words: KindWords;
  readonly rows: readonly RecordRow[];
}

/** A removal that was refused, with what it would leave with a gap. */
interface Refusal {
  readonly row: RecordRow;
  readonly issues: readonly Issue[];
}

/** An order that the server does not know yet. */
interface Moved {
  readonly rows: readonly RecordRow[];
  readonly ids: readonly string[];
}

function isFound(row: RecordRow, search: string): boolean {
  const words = search.toLowerCase().split(/\s+/).filter(Boolean);
  const text = [row.name, ...row.facts].join(' ').toLowerCase();
  return words.every((word) => text.includes(word));
}

/** `ids` with one of them taken to another place. */
function moveTo(ids: readonly string[], id: string, place: number): readonly string[] {
  const rest = ids.filter((other) => other !== id);
  return [...rest.slice(0, place), id, ...rest.slice(place)];
}

/** Records of a kind: searched, opened, moved and removed. */
export function RecordList({ seriesId, words, rows }: RecordListProps) {
  const notices = useNotices();
  const [search, setSearch] = useState('');
  // A move is shown at once; the rows that come back from the server overrule it.
  const [moved, setMoved] = useState<Moved | null>(null);
  const order = moved?.rows === rows ? moved.ids : rows.map(({ id }) => id);
  const [refusal, setRefusal] = useState<Refusal | null>(null);
  const [orderIssues, setOrderIssues] = useState<readonly Issue[]>([]);
  const [isPending, startChange] = useTransition();
  const dragged = useRef<string | null>(null);
  const focusNext = useRef<string | null>(null);

  useEffect(() => {
    if (focusNext.current === null) return;
    document.querySelector<HTMLElement>(focusNext.current)?.focus();
    focusNext.current = null;
  });

  const byId = new Map(rows.map((row) => [row.id, row]));
  const sorted = order.flatMap((id) => byId.get(id) ?? []);
  const shown = sorted.filter((row) => isFound(row, search));
  const canMove = !words.isByTime && search.trim() === '' && rows.length > 1;

  const run = (action: () => Promise<Outcome>, onRefused: (issues: readonly Issue[]) => void) => {
    if (isPending) return;
    startChange(async () => {
      const outcome = await action();
      if (outcome.ok) notices.sayChange(seriesId, outcome.saved);
      else onRefused(outcome.issues);
    });
  };

  const move = (id: string, place: number) => {
    const next = moveTo(order, id, place);
    if (isPending || place < 0 || place >= order.length || order[place] === id) return;
    setMoved({ rows, ids: next });
    setOrderIssues([]);
    run(() => reorderRecordsAction(seriesId, words.kind, next), (issues) => {
      setMoved(null);
      setOrderIssues(issues);
    });
  };

  const remove = (row: RecordRow, cascade: boolean) => {
    if (isPending) return;
    setRefusal(null);
    run(
      () => removeRecordAction({ seriesId, kind: words.kind, id: row.id, revision: row.revision, cascade }),
      (issues) => setRefusal({ row, issues }),
    );
  };

  const dragOf = (id: string) => ({
    onDragStart: (event: DragEvent) => {
      dragged.current = id;
      event.dataTransfer.effectAllowed = 'move';
    },
    onDragOver: (event: DragEvent) => {
      if (dragged.current !== null) event.preventDefault();
    },
    onDrop: (event: DragEvent) => {
      event.preventDefault();
      if (dragged.current !== null) move(dragged.current, order.indexOf(id));
      dragged.current = null;
    },
  });

  return (
    <UntilReady className={styles.body}>
      <search className={styles.tools}>
        <TextField id="search" label={`Search ${words.plural.toLowerCase()}`} type="search" width="middle" value={search} onChange={setSearch} input={{ autoComplete: 'off' }} />
        <output className={styles.found}>
          {shown.length === rows.length ? `${rows.length} in all` : `${shown.length} of ${rows.length}`}
          {words.isByTime ? ', in order of time' : ''}
          {!words.isByTime && search.trim() !== '' ? '. Clear the search to change the order.' : ''}
        </output>
      </search>
      <Refused issues={orderIssues} seriesId={seriesId} />
      {shown.length === 0 ? (
        <p className={styles.none}>
          Nothing here has “{search.trim()}” in it. <Button onClick={() => setSearch('')}>Clear the search</Button>
        </p>
      ) : null}
      <ol className={styles.rows}>
        {shown.map((row) => (
          <RecordItem
            key={row.id}
            seriesId={seriesId}
            words={words}
            row={row}
            place={order.indexOf(row.id)}
            count={order.length}
            canMove={canMove}
            isPending={isPending}
            refusal={refusal?.row.id === row.id ? refusal.issues : null}
            onMove={(by) => {
              focusNext.current = `[data-row="${CSS.escape(row.id)}"] [data-move="${by}"]`;
              move(row.id, order.indexOf(row.id) + by);
            }}
            onRemove={(cascade) => remove(row, cascade)}
            onKeep={() => setRefusal(null)}
            {...(canMove ? { drag: dragOf(row.id) } : {})}
          />
        ))}
      </ol>
    </UntilReady>
  );
}

'use client';

import Link from 'next/link';
import type { DragEventHandler } from 'react';
import { ArrowDown, ArrowUp, GripVertical, Trash2 } from 'lucide-react';
import { Button, IssueList, kindPath } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { KindWords, RecordRow } from '@/lib/views';
import styles from './record-list.module.css';

interface RecordItemProps {
  readonly seriesId: string;
  readonly words: KindWords;
  readonly row: RecordRow;
  readonly place: number;
  readonly count: number;
  readonly canMove: boolean;
  readonly isPending: boolean;
  /** Why it was not removed. */
  readonly refusal: readonly Issue[] | null;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: (cascade: boolean) => void;
  readonly onKeep: () => void;
  /** Dragging is an extra beside the buttons. */
  readonly drag?: { readonly onDragStart: DragEventHandler; readonly onDragOver: DragEventHandler; readonly onDrop: DragEventHandler };
}

/** One record in its list. */
export function RecordItem({ seriesId, words, row, place, count, canMove, isPending, refusal, onMove, onRemove, onKeep, drag }: RecordItemProps) {
  return (
    <li className={styles.row} data-row={row.id} draggable={drag !== undefined} {...drag}>
      {canMove ? <GripVertical size={18} className={styles.grip} aria-hidden /> : null}
      <div className={styles.words}>
        <Link href={`${kindPath(seriesId, words.kind)}/${encodeURIComponent(row.id)}`} className={styles.name} draggable={false}>
          {row.name}
        </Link>
        <ul className={styles.facts}>
          {row.facts.map((fact) => (
            <li key={fact}>{fact}</li>
          ))}
        </ul>
      </div>
      <div className={styles.buttons}>
        {canMove ? (
          <>
            <Button look="quiet" data-move="-1" onClick={() => onMove(-1)} aria-label={`Move ${row.name} up`} aria-disabled={place === 0 || isPending}>
              <ArrowUp size={18} aria-hidden />
            </Button>
            <Button look="quiet" data-move="1" onClick={() => onMove(1)} aria-label={`Move ${row.name} down`} aria-disabled={place === count - 1 || isPending}>
              <ArrowDown size={18} aria-hidden />
            </Button>
          </>
        ) : null}
        <Button look="quiet" onClick={() => onRemove(false)} aria-label={`Remove ${row.name}`} aria-disabled={isPending}>
          <Trash2 size={18} aria-hidden />
        </Button>
      </div>
      {row.issues.length > 0 ? (
        <div className={styles.issues}>
          <IssueList issues={row.issues} seriesId={seriesId} except={row.id} />
        </div>
      ) : null}
      {refusal ? <RefusedRemoval seriesId={seriesId} row={row} issues={refusal} onRemove={onRemove} onKeep={onKeep} /> : null}
    </li>
  );
}

interface RefusedRemovalProps extends Pick<RecordItemProps, 'seriesId' | 'row' | 'onRemove' | 'onKeep'> {
  readonly issues: readonly Issue[];
}

function RefusedRemoval({ seriesId, row, issues, onRemove, onKeep }: RefusedRemovalProps) {
  const canCascade = issues.every(({ code }) => code.startsWith('removal-orphans'));
  return (
    <div role="alert" className={styles.refusal}>
      <p className={styles.refusalTitle}>{row.name} was not removed</p>
      <IssueList issues={issues} seriesId={seriesId} except={row.id} />
      <div className={styles.refusalButtons}>
        {canCascade ? (
          <Button look="stop" onClick={() => onRemove(true)}>
            Remove it with everything that needs it
          </Button>
        ) : null}
        <Button onClick={onKeep}>Keep it</Button>
      </div>
    </div>
  );
}

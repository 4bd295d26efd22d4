'use client';

import { useState, useTransition } from 'react';
import { Check, ListPlus, MoveHorizontal, Pin, PinOff, Undo2, type LucideIcon } from 'lucide-react';
import type { Outcome } from '@/app/_actions/outcome';
import { Button, Refused, UntilReady, useNotices, type ButtonLook } from '@/app/_ui';
import type { Issue } from '@/lib/result';
import type { BlockView } from '@/lib/views';
import { beforeShotsAction, completeTaskAction, jobTripAction, pinTaskAction, reopenTaskAction, unpinTaskAction } from './actions';
import { lateWorkAction } from '../waits/actions';
import { isMovable } from './movable';
import { useMover } from './mover';
import styles from './block-actions.module.css';

/** What the actions need of a block: no more is sent to the browser. */
export type ActedBlock = Pick<BlockView, 'id' | 'kind' | 'taskId' | 'revision' | 'isDone' | 'isPinned' | 'start' | 'title'> & { readonly subjectId: string };

interface Choice {
  readonly word: string;
  readonly icon: LucideIcon;
  readonly look: ButtonLook;
  readonly run: () => Promise<Outcome>;
}

function listTaskChoices(block: ActedBlock, taskId: string, seriesId: string): Choice[] {
  const { revision } = block;
  if (block.kind === 'before-shot') {
    return block.isDone
      ? [{ word: 'Not filmed after all', icon: Undo2, look: 'plain', run: () => beforeShotsAction(seriesId, taskId, revision, false) }]
      : [{ word: 'Filmed', icon: Check, look: 'main', run: () => beforeShotsAction(seriesId, taskId, revision, true) }];
  }
  if (block.kind === 'late-work') return block.isDone ? [] : [{ word: 'Keep it as a task', icon: ListPlus, look: 'plain', run: () => lateWorkAction(seriesId, null, taskId) }];
  if (block.isDone) return [{ word: 'Not done after all', icon: Undo2, look: 'plain', run: () => reopenTaskAction(seriesId, taskId, revision) }];
  if (block.kind !== 'task') return [];
  return [
    { word: 'Done', icon: Check, look: 'main', run: () => completeTaskAction(seriesId, taskId, revision) },
    block.isPinned
      ? { word: 'Unpin', icon: PinOff, look: 'plain', run: () => unpinTaskAction(seriesId, taskId, revision) }
      : { word: 'Pin here', icon: Pin, look: 'plain', run: () => pinTaskAction(seriesId, taskId, revision, block.start) },
  ];
}

function listTripChoices(block: ActedBlock, seriesId: string): Choice[] {
  const event = block.kind === 'drop-off' ? 'dropped off' : block.kind === 'collection' ? 'collected' : null;
  if (event === null) return [];
  const run = () => jobTripAction(seriesId, block.subjectId, block.revision, event, !block.isDone);
  const word = event === 'collected' ? 'Collected' : 'Dropped off';
  return block.isDone ? [{ word: `Not ${event} after all`, icon: Undo2, look: 'plain', run }] : [{ word, icon: Check, look: 'main', run }];
}

interface BlockActionsProps {
  readonly block: ActedBlock;
  readonly seriesId: string;
  /** Only the one that moves work on, as large as a hand in a glove. */
  readonly isLarge?: boolean;
}

/** What can be done with a block: tick it, pin it. A refusal stays in view with its fix. */
export function BlockActions({ block, seriesId, isLarge = false }: BlockActionsProps) {
  const { sayChange } = useNotices();
  const [issues, setIssues] = useState<readonly Issue[]>([]);
  const [isPending, start] = useTransition();
  const mover = useMover();
  const choices = block.taskId === null ? listTripChoices(block, seriesId) : listTaskChoices(block, block.taskId, seriesId);
  const shown = isLarge ? choices.slice(0, 1) : choices;
  if (shown.length === 0) return null;
  const choose = (choice: Choice, button: HTMLElement) => {
    if (isPending) return;
    // An open sheet lies above everything; it makes room for the notice and its undo.
    const sheet = button.closest<HTMLElement>('[popover]');
    start(async () => {
      const outcome = await choice.run();
      setIssues(outcome.ok ? [] : outcome.issues);
      if (!outcome.ok) return;
      sheet?.hidePopover();
      sayChange(seriesId, outcome.saved);
    });
  };
  const takeUp = (button: HTMLElement) => {
    button.closest<HTMLElement>('[popover]')?.hidePopover();
    mover?.take(block.id);
  };
  return (
    <UntilReady className={styles.actions}>
      {shown.map((choice) => (
        <Button key={choice.word} look={choice.look} aria-disabled={isPending} className={isLarge ? styles.large : undefined} onClick={(event) => choose(choice, event.currentTarget)}>
          <choice.icon size={isLarge ? 26 : 18} aria-hidden /> {choice.word}
          {isLarge ? <span className="visually-hidden">: {block.title}</span> : null}
        </Button>
      ))}
      {mover !== null && !isLarge && isMovable(block) ? (
        <Button onClick={(event) => takeUp(event.currentTarget)}>
          <MoveHorizontal size={18} aria-hidden /> Move…
        </Button>
      ) : null}
      <Refused issues={issues} seriesId={seriesId} className={styles.issues} />
    </UntilReady>
  );
}

'use client';

import { useState, useTransition } from 'react';
import { Check, CheckCheck, ListPlus, MoveHorizontal, Pin, PinOff, Undo2, X, type LucideIcon } from 'lucide-react';
import type { Outcome } from '@/app/_actions/outcome';
import { Button, Refused, UntilReady, useNotices, type ButtonLook } from '@/app/_ui';
import type { OpenBefore } from '@/lib/commands';
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
  /** What may be pressed instead when it was refused so. */
  readonly instead?: (issues: readonly Issue[]) => readonly Choice[];
}

/** Done although work before it is open: with that work, where it is all tasks, or without. */
function listDoneAnyway(issues: readonly Issue[], run: (before: OpenBefore) => Promise<Outcome>): readonly Choice[] {
  const asked = issues.find(({ code }) => code === 'work-before-open');
  if (asked === undefined) return [];
  const count = asked.subjects.length;
  const isWorkOnly = asked.subjects.every(({ kind }) => kind === 'task');
  return [
    ...(isWorkOnly ? [{ word: count === 1 ? 'Done, and the one before it' : `Done, and the ${count} before it`, icon: CheckCheck, look: 'main' as const, run: () => run('too') }] : []),
    { word: 'Done all the same', icon: Check, look: 'plain', run: () => run('leave') },
  ];
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
  const complete = (before: OpenBefore) => completeTaskAction(seriesId, taskId, revision, before);
  return [
    { word: 'Done', icon: Check, look: 'main', run: () => complete('ask'), instead: (issues) => listDoneAnyway(issues, complete) },
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
  const [instead, setInstead] = useState<readonly Choice[]>([]);
  const [isPending, start] = useTransition();
  const mover = useMover();
  const choices = block.taskId === null ? listTripChoices(block, seriesId) : listTaskChoices(block, block.taskId, seriesId);
  const first = isLarge ? choices.slice(0, 1) : choices;
  if (first.length === 0) return null;
  // Asked back: the answers stand where the button was.
  const shown = instead.length === 0 ? first : instead;
  const choose = (choice: Choice, button: HTMLElement) => {
    if (isPending) return;
    // An open sheet lies above everything; it makes room for the notice and its undo.
    const sheet = button.closest<HTMLElement>('[popover]');
    start(async () => {
      const outcome = await choice.run();
      setIssues(outcome.ok ? [] : outcome.issues);
      setInstead(outcome.ok ? [] : (choice.instead?.(outcome.issues) ?? []));
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
      {instead.length === 0 ? null : <Refused issues={issues} seriesId={seriesId} className={styles.issues} />}
      {shown.map((choice) => (
        <Button key={choice.word} look={choice.look} aria-disabled={isPending} className={isLarge ? styles.large : undefined} onClick={(event) => choose(choice, event.currentTarget)}>
          <choice.icon size={isLarge ? 26 : 18} aria-hidden /> {choice.word}
          {isLarge ? <span className="visually-hidden">: {block.title}</span> : null}
        </Button>
      ))}
      {instead.length === 0 ? null : <Button look="quiet" onClick={() => { setInstead([]); setIssues([]); }}><X size={18} aria-hidden /> Not yet</Button>}
      {mover !== null && !isLarge && isMovable(block) ? (
        <Button onClick={(event) => takeUp(event.currentTarget)}>
          <MoveHorizontal size={18} aria-hidden /> Move…
        </Button>
      ) : null}
      {instead.length === 0 ? <Refused issues={issues} seriesId={seriesId} className={styles.issues} /> : null}
    </UntilReady>
  );
}

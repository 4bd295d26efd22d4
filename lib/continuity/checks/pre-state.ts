import { startWith } from '@/lib/build';
import { nameOfState, overlaps, sayAt, taskBlocks } from '../facts';
import { stateAt } from '../state-line';
import { makeCheck } from './check';

/** 4: a task starts with its parts in the state it needs, and no two tasks are on a part at once. */
export const preState = makeCheck(4, 'stop', 'Each task finds its parts in the state it needs, and has them to itself', (facts) => {
  const blocks = taskBlocks(facts).filter(({ task }) => task.doneAt === null);
  const states = blocks.flatMap(({ block, task }) => task.parts.flatMap((use) => {
    const part = facts.parts.get(use.partId);
    const line = facts.lineOf.get(use.partId);
    const found = line === undefined ? null : stateAt(line, block.start, 'planned');
    if (use.from === null || found?.stateId == null || found.stateId === use.from) return [];
    return [{
      key: `${task.id}/${use.partId}`, about: [task, part],
      message: `${startWith(task)} starts on ${sayAt(facts, block.start)} with the part “${part?.name ?? ''}” ${nameOfState(part, use.from)}, and it is ${nameOfState(part, found.stateId)} then (${found.source.name}).`,
      fix: 'Plan again, or correct the state in the log.',
    }];
  }));
  const together = blocks.flatMap(({ block, task }, index) => blocks.slice(index + 1).filter((other) => other.block.start < block.end).flatMap((other) => {
    const shared = block.partIds.filter((id) => other.block.partIds.includes(id));
    const changes = [task, other.task].some((one) => one.parts.some((use) => use.to !== null && shared.includes(use.partId)));
    if (shared.length === 0 || !changes || !block.pieces.some((piece) => other.block.pieces.some((second) => overlaps(piece, second)))) return [];
    return [{
      key: `${task.id}+${other.task.id}`, about: [task, other.task, facts.parts.get(shared[0] ?? '')],
      message: `${startWith(task)} and the task “${other.task.name}” are both on the part “${facts.parts.get(shared[0] ?? '')?.name ?? ''}” on ${sayAt(facts, other.block.start)}.`,
      fix: 'Plan again, or put a link between them.',
    }];
  }));
  return [...states, ...together];
});

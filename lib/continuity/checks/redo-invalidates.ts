import { nameOfState, sayAt } from '../facts';
import { makeCheck } from './check';

/** 39: after a redo, what was done beyond that state is to be done again. */
export const redoInvalidates = makeCheck(39, 'warn', 'What a redo has undone is done again', (facts) =>
  facts.lines.flatMap((line) => {
    const part = facts.parts.get(line.partId);
    if (part === undefined || line.redos.length === 0) return [];
    const places = new Map(part.states.map(({ id }, index) => [id, index]));
    return line.redos.flatMap((redo) => {
      const back = places.get(redo.toId) ?? 0;
      const again = new Set(line.points.filter(({ at, isPlanned }) => at > redo.at && !isPlanned).map(({ stateId }) => stateId));
      const lost = facts.document.tasks.filter((task) => task.doneAt !== null && task.doneAt <= redo.at
        && task.parts.some((use) => use.partId === part.id && use.to !== null && (places.get(use.to) ?? -1) > back && !again.has(use.to)));
      if (lost.length === 0) return [];
      return [{
        key: `${part.id}/${redo.branch}`, about: [...lost, part],
        message: `The part “${part.name}” went back from ${nameOfState(part, redo.fromId)} to ${nameOfState(part, redo.toId)} on ${sayAt(facts, redo.at)}, so this is to be done again: ${lost.map(({ name }) => `“${name}”`).join(', ')}.`,
        fix: 'Add the work again as new tasks. The failed way stays on record and may be shown.',
      }];
    });
  }));

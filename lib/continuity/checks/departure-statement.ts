import { sayAt } from '../facts';
import { makeCheck } from './check';

/** 22: work done otherwise than the manual says names both values, the reason and a warning, spoken and captioned. */
export const departureStatement = makeCheck(22, 'stop', 'Every departure from the manual is stated in full, spoken and captioned', (facts) =>
  facts.entries.flatMap((entry) => {
    const { departure } = entry;
    if (departure === null) return [];
    const missing = [
      ...(departure.manualValue.trim() === '' ? ['the value of the manual'] : []), ...(departure.ownValue.trim() === '' ? ['your own value'] : []),
      ...(departure.reason.trim() === '' ? ['the reason'] : []), ...(departure.warning.trim() === '' ? ['a warning'] : []),
      ...(departure.isSpoken ? [] : ['it spoken']), ...(departure.isCaptioned ? [] : ['it captioned']),
    ];
    if (missing.length === 0) return [];
    const task = entry.taskId === null ? undefined : facts.tasks.get(entry.taskId);
    return [{
      key: entry.id, about: [task],
      message: `The departure from the manual of ${sayAt(facts, entry.at)}${task === undefined ? '' : ` in “${task.name}”`} lacks ${missing.join(', ')}.`,
      fix: 'Complete the statement, or follow the manual.',
    }];
  }));

import { issue } from '@/lib/result';
import { quoteName, startWith, stateName, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A part has at least one state, and no two of the same name or id. */
export const checkPartStates: Rule = (document) =>
  document.parts.flatMap((part) => {
    const subjects = subjectsOf(part);
    if (part.states.length === 0) {
      return [issue('part-without-states', `${startWith(part)} has no state.`, 'Add the state it is in at the start, such as “as bought”.', { path: ['states'], subjects })];
    }
    const seen = new Set<string>();
    return part.states.flatMap((state, index) => {
      const keys = [`id ${state.id}`, `name ${state.name.trim().toLowerCase()}`];
      const isTwice = keys.some((key) => seen.has(key));
      for (const key of keys) seen.add(key);
      if (!isTwice) return [];
      return [issue('part-state-twice', `${startWith(part)} has the state ${quoteName(stateName(part, state.id))} twice.`,
        `Give state ${index + 1} a name of its own.`, { path: ['states', index, 'name'], subjects })];
    });
  });

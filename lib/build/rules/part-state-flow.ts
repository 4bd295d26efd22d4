import { issue, type Issue } from '@/lib/result';
import { listStateUses, type StateUse } from '../derive-order';
import type { SeriesDocument } from '../model';
import { findRecord } from '../records';
import { listNames, quoteName, startWith, stateName, subjectsOf } from '../words';
import type { Work } from '../works';
import type { Rule } from './rule';

function pathTo(work: Work, use: StateUse, end: 'from' | 'to'): Issue['path'] {
  const index = work.parts.findIndex((other) => other.partId === use.partId && other[end] === use.stateId);
  // Needed for a shot alone.
  return index < 0 ? ['shots'] : ['parts', index, end];
}

function checkUse(document: SeriesDocument, use: StateUse): readonly Issue[] {
  const part = findRecord(document, 'part', use.partId);
  if (part === undefined || !part.states.some((state) => state.id === use.stateId)) return [];
  const [state, partName] = [quoteName(stateName(part, use.stateId)), quoteName(part.name)];
  const isFirst = part.states[0]?.id === use.stateId;
  const found: Issue[] = [];
  const maker = use.makers.at(-1);
  if (maker !== undefined && isFirst) {
    found.push(issue('first-state-made', `${startWith(maker.record)} brings the part ${partName} into ${state}, the state it has at the start.`,
      `Add a state of its own, such as ${quoteName(`${stateName(part, use.stateId)} again`)}, and let the work lead there.`,
      { path: pathTo(maker, use, 'to'), subjects: subjectsOf(maker.record, part) }));
  } else if (maker !== undefined && use.makers.length > 1) {
    found.push(issue('state-made-twice', `${listNames(use.makers.map((work) => work.record.name))} each bring the part ${partName} into ${state}, so the order of work is not clear.`,
      `Add a state of its own, such as ${quoteName(`${stateName(part, use.stateId)} again`)}, and let ${quoteName(maker.record.name)} lead there.`,
      { path: pathTo(maker, use, 'to'), subjects: subjectsOf(maker.record, part, ...use.makers.slice(0, -1).map((work) => work.record)) }));
  }
  const taker = use.takers.at(-1);
  if (taker !== undefined && use.takers.length > 1) {
    found.push(issue('state-taken-twice', `${listNames(use.takers.map((work) => work.record.name))} each take the part ${partName} out of ${state}; only one can.`,
      `Let ${quoteName(taker.record.name)} start from the state that the work before it leaves.`,
      { path: pathTo(taker, use, 'from'), subjects: subjectsOf(taker.record, part, ...use.takers.slice(0, -1).map((work) => work.record)) }));
  }
  const needers = [...use.keepers, ...use.takers];
  const [needer] = needers;
  if (needer !== undefined && maker === undefined && !isFirst) {
    found.push(issue('state-never-made', `${listNames(needers.map((work) => work.record.name))} ${needers.length === 1 ? 'needs' : 'need'} the part ${partName} in ${state}, and nothing brings it there.`,
      `Add a task or outside job that brings ${partName} into ${state}.`,
      { severity: 'warn', path: pathTo(needer, use, 'from'), subjects: subjectsOf(needer.record, part) }));
  }
  return found;
}

/**
 * Each state of a part is made by one work, taken away by one, and made before it is needed.
 * A state that nothing makes yet is only pointed out, since work may be entered in any order.
 */
export const checkPartStateFlow: Rule = (document) => listStateUses(document).flatMap((use) => checkUse(document, use));

import { issue, type Issue } from '@/lib/result';
import type { Part, PartUse, SeriesDocument } from '../model';
import { findRecord } from '../records';
import { listNames, quoteName, startWith, stateName, subjectsOf } from '../words';
import { listWorks, type Work } from '../works';
import type { Rule } from './rule';

function checkEnds(work: Work, use: PartUse, part: Part, index: number): readonly Issue[] {
  const subjects = subjectsOf(work.record, part);
  const foreign = (['from', 'to'] as const).flatMap((end) => {
    const stateId = use[end];
    if (stateId === null || part.states.some((state) => state.id === stateId)) return [];
    const verb = end === 'from' ? 'needs' : 'brings';
    return [issue('state-of-another-part', `${startWith(work.record)} ${verb} the part ${quoteName(part.name)} in a state that it does not have: ${quoteName(stateId)}.`,
      `Choose one of its states: ${listNames(part.states.map((state) => state.name))}.`, { path: ['parts', index, end], subjects })];
  });
  if (foreign.length > 0 || use.from === null || use.from !== use.to) return foreign;
  return [issue('part-use-goes-nowhere', `${startWith(work.record)} takes the part ${quoteName(part.name)} from ${quoteName(stateName(part, use.from))} to the same state.`,
    'Leave the state after it empty when the part stays as it is.', { path: ['parts', index, 'to'], subjects })];
}

function checkWork(document: SeriesDocument, work: Work): readonly Issue[] {
  return work.parts.flatMap((use, index) => {
    const part = findRecord(document, 'part', use.partId);
    if (part === undefined) return [];
    const isTwice = work.parts.findIndex((other) => other.partId === use.partId) < index;
    if (!isTwice) return checkEnds(work, use, part, index);
    return [issue('part-twice-in-work', `${startWith(work.record)} lists the part ${quoteName(part.name)} twice.`,
      'Keep one line that goes from its first state to its last.', { path: ['parts', index, 'partId'], subjects: subjectsOf(work.record, part) })];
  });
}

/** What a task or outside job does to a part is a step between two states of that part, each part once. */
export const checkPartUses: Rule = (document) => listWorks(document).flatMap((work) => checkWork(document, work));

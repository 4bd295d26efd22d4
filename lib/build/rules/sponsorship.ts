import { issue, type Issue } from '@/lib/result';
import type { Sponsorship } from '../model';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const SECONDS = ['minimumSeconds', 'spotStart', 'spotEnd', 'spokenAt', 'shownFrom', 'shownUntil'] as const;
const SPANS = [['spotStart', 'spotEnd', 'spot'], ['shownFrom', 'shownUntil', 'disclosure']] as const;

function checkSponsorship(record: Sponsorship): readonly Issue[] {
  const subjects = subjectsOf(record);
  const negative = SECONDS.filter((key) => (record[key] ?? 0) < 0).map((key) =>
    issue('sponsor-seconds', `${startWith(record)} has ${formatNumber(record[key] ?? 0)} s; seconds count from 0.`, 'Type 0 s or more.', { path: [key], subjects }));
  const spans = SPANS.flatMap(([from, until, what]) => {
    const [start, end] = [record[from], record[until]];
    if ((start === null) !== (end === null)) {
      const missing = start === null ? from : until;
      return [issue('sponsor-span-open', `The ${what} of ${startWith(record).replace('The ', 'the ')} has a ${start === null ? 'end but no start' : 'start but no end'}.`, 'Type both, or neither.', { path: [missing], subjects })];
    }
    if (start === null || end === null || end > start) return [];
    return [issue('sponsor-span-ends-early', `The ${what} of ${startWith(record).replace('The ', 'the ')} ends at ${formatNumber(end)} s, not after its start at ${formatNumber(start)} s.`, 'Type an end after the start.', { path: [until], subjects })];
  });
  return [...negative, ...spans];
}

/** Seconds count from 0, and what starts ends later. What is still owed is told on the episode's page. */
export const checkSponsorships: Rule = (document) => document.sponsorships.flatMap(checkSponsorship);

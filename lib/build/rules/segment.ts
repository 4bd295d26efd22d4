import { issue, type Issue } from '@/lib/result';
import type { Segment, SeriesDocument } from '../model';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

function checkSegment({ series }: SeriesDocument, segment: Segment): readonly Issue[] {
  const subjects = subjectsOf(segment);
  const found: Issue[] = [];
  const room = series.runtime.max - series.titles;
  if (!(segment.length > 0 && Number.isFinite(segment.length))) {
    found.push(issue('segment-length', `${startWith(segment)} is ${formatNumber(segment.length)} min long on screen; it must be longer than 0 min.`, 'Type how long it will be on screen.', { path: ['length'], subjects }));
  } else if (segment.length > room) {
    found.push(issue('segment-longer-than-episode', `${startWith(segment)} is ${formatNumber(segment.length)} min long, and the longest episode has ${formatNumber(room)} min beside its titles.`,
      'Split the segment, or allow longer episodes.', { path: ['length'], subjects }));
  }
  for (const [key, word] of [['hook', 'hook'], ['hang', 'open end']] as const) {
    if (segment[key] >= 0 && segment[key] <= 1) continue;
    found.push(issue('segment-share', `${startWith(segment)} has a ${word} of ${formatNumber(segment[key] * 100)} %; it must be from 0 to 100 %.`, 'Type 0 for none and 100 for the strongest.', { path: [key], subjects }));
  }
  return found;
}

/** A segment is longer than nothing and fits an episode; hook and open end are shares. */
export const checkSegments: Rule = (document) => document.segments.flatMap((segment) => checkSegment(document, segment));

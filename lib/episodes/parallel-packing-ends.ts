/** What packing threads side by side is given, and how good a segment is as the last of an episode. */
import type { PackingRules, StorySegment } from './packing-model';

export interface SearchProblem {
  readonly threads: readonly (readonly StorySegment[])[];
  readonly evergreens: readonly StorySegment[];
  readonly rules: PackingRules;
  readonly dueAt: readonly number[];
  /** Ids of segments that must not be the last of an episode, and of those that must. */
  readonly noCutAfter: ReadonlySet<string>;
  readonly cutAfter: ReadonlySet<string>;
}

/** No run may come last. */
export const NO_END = -1;
/** A run that must come last goes before every other. */
export const MUST_END = 2;

/** How good a segment is as the last of an episode: what it leaves open, unless it must be the last or must not. */
export function endValue(segment: StorySegment, { noCutAfter, cutAfter }: Pick<SearchProblem, 'noCutAfter' | 'cutAfter'>): number {
  if (cutAfter.has(segment.id)) return MUST_END + segment.hang;
  return noCutAfter.has(segment.id) ? NO_END : segment.hang;
}

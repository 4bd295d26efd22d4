/** What packing segments into episodes is given, what it answers, and what makes no sense. */
import { issue, type Issue } from '@/lib/result';
import type { Instant } from '@/lib/units';

/** What packing looks at in a segment. */
export interface StorySegment {
  readonly id: string;
  readonly name: string;
  /** Expected length on screen, minutes. */
  readonly length: number;
  /** It shows something finished. */
  readonly isResult: boolean;
  /** How well it opens an episode's story, 0 to 1. */
  readonly hook: number;
  /** How much it leaves open when an episode ends on it, 0 to 1. */
  readonly hang: number;
  /** When its recording is expected complete; null: not known, and no hindrance. */
  readonly readyAt: Instant | null;
}

/** What weighs how much; common practice, no source. */
export interface PackingWeights {
  readonly length: number;
  readonly hang: number;
  readonly hook: number;
  readonly result: number;
}

export const USUAL_WEIGHTS: PackingWeights = { length: 10, hang: 1, hook: 1, result: 0.25 };

/** Minutes of titles and credits in an episode; common practice, no source. */
export const USUAL_TITLES = 0.5;

export interface PackingRules {
  /** Minutes on screen, titles included. */
  readonly runtime: { readonly target: number; readonly min: number; readonly max: number };
  /** Minutes of titles and credits in every episode. */
  readonly titles: number;
  readonly leastResults: number;
  readonly weights: PackingWeights;
}

export interface PackingProblem {
  /** In the order they are told. */
  readonly segments: readonly StorySegment[];
  readonly rules: PackingRules;
  /** Ids of segments that must not be the last of an episode. */
  readonly noCutAfter: readonly string[];
  /** Ids of segments that must be the last of an episode. */
  readonly cutAfter: readonly string[];
  /** When the recording of the 1st, 2nd, … episode must be complete; as many episodes as there are moments at most. Empty: no dates. */
  readonly dueAt: readonly Instant[];
  /** null: as many as it takes. */
  readonly episodeCount: number | null;
}

/** The parts of an episode's cost; less is better. */
export interface PackingTerms {
  readonly length: number;
  readonly hang: number;
  readonly hook: number;
  readonly result: number;
}

export interface PackedEpisode {
  readonly segmentIds: readonly string[];
  /** Minutes on screen, titles included. */
  readonly length: number;
  readonly results: number;
  readonly terms: PackingTerms;
}

export interface Packing {
  readonly cost: number;
  readonly episodes: readonly PackedEpisode[];
}

/** A third result adds nothing. */
export const RESULTS_THAT_COUNT = 2;

/** The cost of an episode from what is in it. `hang` is 0 for the last one of all. */
export function termsOf(length: number, results: number, hook: number, hang: number, { runtime, weights }: PackingRules): PackingTerms {
  return {
    length: weights.length * ((length - runtime.target) / runtime.target) ** 2,
    hang: -weights.hang * hang,
    hook: -weights.hook * hook,
    result: -weights.result * Math.min(results, RESULTS_THAT_COUNT),
  };
}

export function costOf(terms: PackingTerms): number {
  return terms.length + terms.hang + terms.hook + terms.result;
}

const quoted = (segment: StorySegment): string => `“${segment.name}”`;

const subjects = (...segments: readonly StorySegment[]) => segments.map(({ id, name }) => ({ kind: 'segment', id, name }));

function checkSegment(segment: StorySegment, { runtime, titles }: PackingRules): readonly Issue[] {
  const found: Issue[] = [];
  const { length } = segment;
  const room = runtime.max - titles;
  if (!(length > 0)) {
    found.push(issue('segment-length', `The segment ${quoted(segment)} is ${length} min long; it must be longer than 0 min.`, 'Type how long it will be on screen.', { path: ['length'], subjects: subjects(segment) }));
  } else if (length > room) {
    found.push(issue('segment-longer-than-episode', `The segment ${quoted(segment)} is ${length} min long, and the longest episode has ${room} min beside its titles.`,
      'Split the segment, or allow longer episodes.', { path: ['length'], subjects: subjects(segment) }));
  }
  for (const key of ['hook', 'hang'] as const) {
    if (segment[key] >= 0 && segment[key] <= 1) continue;
    found.push(issue('segment-share', `The ${key} of the segment ${quoted(segment)} is ${segment[key]}; it must be from 0 to 1.`, 'Type 0 for none and 1 for the strongest.', { path: [key], subjects: subjects(segment) }));
  }
  return found;
}

/** Runtimes in rising order, titles that leave room, weights that are no less than 0. */
export function checkRules({ runtime, titles, weights, leastResults }: PackingRules): readonly Issue[] {
  const found: Issue[] = [];
  const { min, target, max } = runtime;
  if (!(min > 0 && min <= target && target <= max)) {
    found.push(issue('runtime-out-of-range', `Episodes of ${target} min are wished for, from ${min} to ${max} min; these do not fit together.`, 'Type a shortest, a wished and a longest runtime in rising order.', { path: ['runtime', 'target'] }));
  }
  if (!(titles >= 0 && titles < max)) found.push(issue('titles', `Titles of ${titles} min leave no room in an episode of ${max} min.`, 'Type 0 min or more, less than the longest episode.', { path: ['titles'] }));
  if (!(Number.isInteger(leastResults) && leastResults >= 0)) found.push(issue('least-results', `${leastResults} results an episode make no sense.`, 'Type 0, 1 or 2.', { path: ['leastResults'] }));
  for (const [key, value] of Object.entries(weights)) {
    if (!(value >= 0)) found.push(issue('weight', `The weight of ${key} is ${value}; it must be 0 or more.`, 'Type 0 to leave it out.', { path: ['weights', key] }));
  }
  return found;
}

function checkCuts({ segments, noCutAfter, cutAfter }: PackingProblem): readonly Issue[] {
  const known = new Map(segments.map((segment) => [segment.id, segment]));
  const both = cutAfter.filter((id) => noCutAfter.includes(id)).map((id) => known.get(id)).filter((segment) => segment !== undefined);
  return both.map((segment) => issue('cut-pinned-and-forbidden', `An episode must end after ${quoted(segment)}, and must not.`, 'Take one of the two back.', { subjects: subjects(segment) }));
}

/** Every fault of the input: lengths, shares, runtimes, cuts that are both pinned and forbidden. */
export function checkPacking(problem: PackingProblem): readonly Issue[] {
  const none = problem.segments.length === 0 ? [issue('no-segments', 'There are no segments to put into episodes.', 'Add a segment.')] : [];
  return [...none, ...checkRules(problem.rules), ...problem.segments.flatMap((segment) => checkSegment(segment, problem.rules)), ...checkCuts(problem)];
}

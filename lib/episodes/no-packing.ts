/** Why no packing exists: the demands that, taken back one at a time, let one be found. */
import { issue, type Issue } from '@/lib/result';
import type { PackingProblem } from './packing-model';

interface Relaxation {
  readonly isAsked: (problem: PackingProblem) => boolean;
  readonly relax: (problem: PackingProblem) => PackingProblem;
  readonly why: string;
  readonly fix: string;
}

const LONG = 1e6;

const withMin = (problem: PackingProblem): PackingProblem => ({ ...problem, rules: { ...problem.rules, runtime: { ...problem.rules.runtime, min: Number.MIN_VALUE } } });

const RELAXATIONS: readonly Relaxation[] = [
  { isAsked: (p) => p.cutAfter.length > 0, relax: (p) => ({ ...p, cutAfter: [] }), why: 'the fixed ends of episodes', fix: 'Take a fixed end back.' },
  { isAsked: (p) => p.noCutAfter.length > 0, relax: (p) => ({ ...p, noCutAfter: [] }), why: 'the segments that no episode may end with', fix: 'Allow an episode to end with one of them.' },
  { isAsked: (p) => p.rules.leastResults > 0, relax: (p) => ({ ...p, rules: { ...p.rules, leastResults: 0 } }), why: 'the result wanted in every episode', fix: 'Mark a segment that shows something finished, or ask for no result.' },
  {
    isAsked: (p) => p.segments.some((segment) => segment.readyAt !== null) && p.dueAt.length > 0,
    relax: (p) => ({ ...p, segments: p.segments.map((segment) => ({ ...segment, readyAt: null })) }),
    why: 'the days the segments are recorded by', fix: 'Move the releases back, or record a segment earlier.',
  },
  { isAsked: (p) => p.episodeCount !== null, relax: (p) => ({ ...p, episodeCount: null }), why: 'the number of episodes', fix: 'Leave the number of episodes open.' },
  { isAsked: (p) => p.dueAt.length > 0, relax: (p) => ({ ...p, dueAt: [] }), why: 'the number of releases', fix: 'Add an episode, or cut a segment.' },
  { isAsked: () => true, relax: withMin, why: 'the shortest runtime', fix: 'Allow shorter episodes, or add a segment.' },
  {
    isAsked: () => true,
    relax: (p) => ({ ...p, rules: { ...p.rules, runtime: { ...p.rules.runtime, max: LONG } } }),
    why: 'the longest runtime', fix: 'Allow longer episodes, or split a segment.',
  },
];

/** One issue for each demand that alone stands in the way; one for all together when no single one does. */
export function explainNoPacking(problem: PackingProblem, isPossible: (problem: PackingProblem) => boolean): readonly Issue[] {
  const alone = RELAXATIONS.filter(({ isAsked, relax }) => isAsked(problem) && isPossible(relax(problem)));
  const total = problem.segments.reduce((sum, segment) => sum + segment.length, 0);
  const what = `The ${problem.segments.length} segments, ${Math.round(total * 10) / 10} min, cannot be cut into episodes`;
  if (alone.length === 0) {
    return [issue('no-packing', `${what}: runtimes, results, cuts and dates do not fit together, and no single one of them is the cause.`, 'Ask for less: wider runtimes first.')];
  }
  return alone.map(({ why, fix }) => issue('no-packing', `${what}; without ${why} they could.`, fix));
}

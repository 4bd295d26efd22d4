/** Segments for tests of packing. */
import { USUAL_WEIGHTS, type PackingProblem, type PackingRules, type StorySegment } from '@/lib/episodes';

export const RULES: PackingRules = { runtime: { target: 14, min: 10, max: 18 }, titles: 1.5, leastResults: 1, weights: USUAL_WEIGHTS };

export function segment(id: string, length: number, more: Partial<StorySegment> = {}): StorySegment {
  return { id, name: `Segment ${id}`, length, isResult: false, hook: 0, hang: 0, readyAt: null, ...more };
}

const LENGTHS = [3, 4, 5, 2.5, 6, 4, 3.5, 5, 4.5, 3, 5.5, 4];
const RESULTS = [0, 0, 1, 0, 0, 1, 0, 0, 1, 0, 1, 1];
const HOOKS = [0.6, 0, 0.2, 0.4, 0, 0.5, 0.3, 0.1, 0.8, 0.2, 0.6, 0.9];
const HANGS = [0.2, 0.5, 0.1, 0.8, 0.2, 0.6, 0.1, 0.7, 0.3, 0.9, 0.2, 0];

/** Twelve segments whose best packing is known. */
export const TWELVE: readonly StorySegment[] = LENGTHS.map((length, index) =>
  segment(String(index + 1), length, { isResult: RESULTS[index] === 1, hook: HOOKS[index]!, hang: HANGS[index]! }));

export function packing(segments: readonly StorySegment[], more: Partial<PackingProblem> = {}): PackingProblem {
  return { segments, rules: RULES, noCutAfter: [], cutAfter: [], dueAt: [], episodeCount: null, ...more };
}

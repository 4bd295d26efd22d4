/** Segments told in a fixed order, cut into episodes in the best way there is. */
import { fail, ok, type Issue, type Result } from '@/lib/result';
import { explainNoPacking } from './no-packing';
import {
  checkPacking, costOf, termsOf, type Packing, type PackedEpisode, type PackingProblem, type StorySegment,
} from './packing-model';

/** Best packings that are kept. */
const KEPT = 3;
/** Minutes are sums of typed decimals; a length that meets its limit may miss it by this. */
const ROUNDING = 1e-9;

/** An episode of the segments from `from` up to, not with, `to`. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly cost: number;
  readonly episode: PackedEpisode;
  readonly readyAt: number;
}

/** A way to reach a cut: the last episode, and which of the ways to its start. */
interface Way {
  readonly cost: number;
  readonly span: Span;
  readonly before: Way | null;
}

/** What an episode holds, grown towards its start one segment at a time. */
interface Content {
  readonly length: number;
  readonly results: number;
  readonly hook: number;
  readonly readyAt: number;
}

function add(content: Content, segment: StorySegment): Content {
  return {
    length: content.length + segment.length,
    results: content.results + (segment.isResult ? 1 : 0),
    hook: Math.max(content.hook, segment.hook),
    readyAt: Math.max(content.readyAt, segment.readyAt ?? -Infinity),
  };
}

/** Every allowed episode that ends with the segment before `to`. */
function spansEndingAt(problem: PackingProblem, to: number, mustCut: ReadonlySet<string>): readonly Span[] {
  const { segments, rules } = problem;
  const last = segments[to - 1]!;
  const hang = to < segments.length ? last.hang : 0;
  const spans: Span[] = [];
  let content: Content = { length: rules.titles, results: 0, hook: 0, readyAt: -Infinity };
  for (let from = to - 1; from >= 0; from -= 1) {
    const segment = segments[from]!;
    if (from < to - 1 && mustCut.has(segment.id)) break;
    content = add(content, segment);
    const { length, results } = content;
    if (length > rules.runtime.max + ROUNDING) break;
    if (length < rules.runtime.min - ROUNDING || results < rules.leastResults) continue;
    const terms = termsOf(length, results, content.hook, hang, rules);
    const segmentIds = segments.slice(from, to).map((each) => each.id);
    spans.push({ from, to, cost: costOf(terms), readyAt: content.readyAt, episode: { segmentIds, length, results, terms } });
  }
  return spans;
}

/** Most episodes there can be. */
function mostEpisodes({ segments, dueAt, episodeCount, rules }: PackingProblem): number {
  const total = segments.reduce((sum, segment) => sum + segment.length, 0);
  const room = rules.runtime.min - rules.titles;
  const byLength = room > 0 ? Math.floor(total / room + ROUNDING) : segments.length;
  return Math.min(segments.length, byLength, dueAt.length > 0 ? dueAt.length : Infinity, episodeCount ?? Infinity);
}

/** Puts a way into a list of the best, the cheapest first; among equals the one found first. */
function keep(ways: Way[], way: Way): void {
  let place = ways.length;
  while (place > 0 && ways[place - 1]!.cost > way.cost) place -= 1;
  if (place >= KEPT) return;
  ways.splice(place, 0, way);
  if (ways.length > KEPT) ways.pop();
}

const START: Way = { cost: 0, span: { from: 0, to: 0, cost: 0, episode: { segmentIds: [], length: 0, results: 0, terms: { length: 0, hang: 0, hook: 0, result: 0 } }, readyAt: -Infinity }, before: null };

function unwind(way: Way): Packing {
  const episodes: PackedEpisode[] = [];
  for (let each: Way | null = way; each !== null && each !== START; each = each.before) episodes.unshift(each.span.episode);
  return { cost: way.cost, episodes };
}

/** Allowed episodes by the cut they end at; none at a cut that is forbidden. */
function listSpans(problem: PackingProblem): readonly (readonly Span[])[] {
  const [forbidden, mustCut] = [new Set(problem.noCutAfter), new Set(problem.cutAfter)];
  return problem.segments.map((segment, index) => {
    const isEnd = index === problem.segments.length - 1;
    return forbidden.has(segment.id) && !isEnd ? [] : spansEndingAt(problem, index + 1, mustCut);
  });
}

/** Best ways to every cut with exactly `count` episodes, from those with one less. */
function extend(before: readonly (readonly Way[])[], spans: readonly (readonly Span[])[], due: number): Way[][] {
  const after: Way[][] = before.map(() => []);
  for (const ending of spans) {
    for (const span of ending) {
      if (span.readyAt > due) continue;
      const ways = after[span.to]!;
      for (const way of before[span.from]!) keep(ways, { cost: way.cost + span.cost, span, before: way });
    }
  }
  return after;
}

/** The best packings, or an empty list when there is none; the input has been checked. */
function bestPackings(problem: PackingProblem): readonly Packing[] {
  const n = problem.segments.length;
  const spans = listSpans(problem);
  const complete: Way[] = [];
  let ways: readonly (readonly Way[])[] = [[START], ...problem.segments.map(() => [])];
  for (let count = 1; count <= mostEpisodes(problem); count += 1) {
    ways = extend(ways, spans, problem.dueAt[count - 1] ?? Infinity);
    if (problem.episodeCount === null || problem.episodeCount === count) for (const way of ways[n]!) keep(complete, way);
  }
  return complete.map(unwind);
}

/**
 * The three cheapest ways to cut the segments into episodes, each with the terms of its cost. Exact: dynamic programming
 * over the cuts and the number of episodes, f(k, j) = min f(k - 1, i) + cost(i, j) over the episodes whose length is within
 * bounds, with results enough, recorded in time for the k-th release, ending where a cut may be and passing over no pinned one.
 * Cost of an episode: length·((L - T)/T)² - hang of its last segment (not of the last episode) - hook of its best one - result·min(R, 2).
 * Fails with the faults of the input, or with `no-packing`, naming what stands in the way.
 */
export function packSegments(problem: PackingProblem): Result<readonly Packing[], readonly Issue[]> {
  const faults = checkPacking(problem);
  if (faults.length > 0) return fail(faults);
  const best = bestPackings(problem);
  if (best.length > 0) return ok(best);
  return fail(explainNoPacking(problem, (relaxed) => bestPackings(relaxed).length > 0));
}

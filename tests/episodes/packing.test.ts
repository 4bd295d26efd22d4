import { expect, test } from 'vitest';
import { packParallel, packSegments, type PackingProblem, type ParallelProblem, type StorySegment } from '@/lib/episodes';
import { instant } from '@/lib/units';
import { unwrap } from '@/lib/result';
import { packing, RULES, segment, TWELVE } from './segments';

const ANY_END = { noCutAfter: [], cutAfter: [] };

const cuts = (problem: PackingProblem): (string | undefined)[] => unwrap(packSegments(problem))[0]!.episodes.map((episode) => episode.segmentIds.at(-1));

function codes(problem: PackingProblem): string[] {
  const found = packSegments(problem);
  return found.ok ? [] : found.error.map(({ code }) => code);
}

test('three packings are kept, the cheapest first, each with the terms of its cost', () => {
  const best = unwrap(packSegments(packing(TWELVE)));
  expect(best).toHaveLength(3);
  expect(best.map(({ cost }) => cost)).toEqual(best.map(({ cost }) => cost).toSorted((a, b) => a - b));
  for (const { cost, episodes } of best) {
    const sum = episodes.reduce((total, { terms }) => total + terms.length + terms.hang + terms.hook + terms.result, 0);
    expect(sum).toBeCloseTo(cost, 10);
  }
});

test('a forbidden cut is not made, a pinned one is', () => {
  expect(cuts(packing(TWELVE, { noCutAfter: ['4'] }))).not.toContain('4');
  expect(cuts(packing(TWELVE, { cutAfter: ['3'] }))).toContain('3');
  expect(codes(packing(TWELVE, { cutAfter: ['4'], noCutAfter: ['4'] }))).toEqual(['cut-pinned-and-forbidden']);
});

test('a segment that is recorded too late for an early release goes into a later one, or nowhere', () => {
  const late = TWELVE.map((each, index) => (index === 3 ? { ...each, readyAt: instant(5) } : each));
  const dueAt = [4, 10, 20, 30].map(instant);
  expect(cuts(packing(late, { dueAt }))[0]).toBe('3');
  expect(codes(packing(late, { dueAt: [1, 2, 3, 4].map(instant) }))).toContain('no-packing');
  expect(cuts(packing(late, { dueAt: [5, 10, 20, 30].map(instant) }))[0]).toBe('4');
});

test('what stands in the way of a packing is named', () => {
  const none = packSegments(packing([segment('a', 9), segment('b', 9)]));
  expect(none.ok ? '' : none.error[0]!.message).toBe('The 2 segments, 18 min, cannot be cut into episodes; without the result wanted in every episode they could.');
  const nothing = packSegments(packing([segment('a', 3)]));
  expect(nothing.ok ? '' : nothing.error[0]!.message).toContain('no single one of them is the cause');
  const short = packSegments(packing([segment('a', 3, { isResult: true })]));
  expect(short.ok ? '' : short.error[0]!.message).toContain('without the shortest runtime');
});

test('a segment of exactly the longest runtime fits, one of a little more is refused by name', () => {
  expect(cuts(packing([segment('a', 16.5, { isResult: true })]))).toEqual(['a']);
  const found = packSegments(packing([segment('a', 16.6, { isResult: true })]));
  expect(found.ok ? '' : found.error[0]!.message).toBe('The segment “Segment a” is 16.6 min long, and the longest episode has 16.5 min beside its titles.');
});

test('every fault of the input is told at once', () => {
  const rules = { ...RULES, runtime: { target: 20, min: 10, max: 18 }, titles: -1, leastResults: -1, weights: { ...RULES.weights, hook: -1 } };
  expect(codes(packing([segment('a', 0), segment('b', 5, { hook: 2, hang: Number.NaN })], { rules }))).toEqual(
    ['runtime-out-of-range', 'titles', 'least-results', 'weight', 'segment-length', 'segment-share', 'segment-share'],
  );
  expect(codes(packing([]))).toEqual(['no-segments']);
});

/** Two hundred segments with made-up but fixed values. */
const LONG: readonly StorySegment[] = Array.from({ length: 200 }, (_, k) =>
  segment(`${k}`, 1 + ((k * 7) % 5) / 4, { isResult: k % 5 === 4, hook: ((k * 13) % 11) / 10, hang: ((k * 17) % 11) / 10, readyAt: instant(k) }));

test('two hundred segments are packed into twenty dated episodes in at most 100 ms of the processor', () => {
  const total = LONG.reduce((sum, each) => sum + each.length, 0);
  const target = total / 20 + 1.5;
  const rules = { ...RULES, runtime: { target, min: target - 5, max: target + 5 } };
  const problem = packing(LONG, { rules, episodeCount: 20, dueAt: Array.from({ length: 20 }, (_, k) => instant(20 * (k + 1))) });
  packSegments(problem);
  const times = Array.from({ length: 5 }, () => {
    const start = process.cpuUsage();
    expect(unwrap(packSegments(problem))[0]!.episodes).toHaveLength(20);
    const { user, system } = process.cpuUsage(start);
    return (user + system) / 1000;
  });
  expect(Math.min(...times)).toBeLessThanOrEqual(100);
});

test('two threads side by side: each keeps its order, and the run that ends best comes last', () => {
  const threads = [
    [segment('a1', 5, { hang: 0.9 }), segment('a2', 6, { isResult: true, hang: 0.4 })],
    [segment('b1', 7, { isResult: true, hang: 0.1 }), segment('b2', 6)],
  ];
  const packed = unwrap(packParallel({ threads, evergreens: [], rules: RULES, dueAt: [], ...ANY_END }));
  expect(packed.gap).toBe(0);
  expect(packed.episodes.map((episode) => episode.segmentIds)).toEqual([['b1', 'a1'], ['b2', 'a2']]);
});

test('side by side, a segment that must not end an episode is told earlier in it, one that must comes last', () => {
  const threads = [[segment('a1', 6, { hang: 0.9 }), segment('a2', 6, { isResult: true })], [segment('b1', 6, { isResult: true }), segment('b2', 6)]];
  const never = unwrap(packParallel({ threads, evergreens: [], rules: RULES, dueAt: [], noCutAfter: ['a1'], cutAfter: [] }));
  expect(never.episodes[0]!.segmentIds.at(-1)).not.toBe('a1');
  const must = unwrap(packParallel({ threads, evergreens: [], rules: RULES, dueAt: [], noCutAfter: [], cutAfter: ['b1'] }));
  expect(must.episodes[0]!.segmentIds.at(-1)).toBe('b1');
});

test('an evergreen fills an episode that would be too short, and stays in hand where it does not help', () => {
  const threads = [[segment('a', 6, { isResult: true })]];
  const packed = unwrap(packParallel({ threads, evergreens: [segment('spare', 6), segment('long', 16)], rules: RULES, dueAt: [], ...ANY_END }));
  expect(packed.episodes[0]!.segmentIds).toContain('spare');
  const full = unwrap(packParallel({ threads: [[segment('a', 12.5, { isResult: true })]], evergreens: [segment('spare', 4)], rules: RULES, dueAt: [], ...ANY_END }));
  expect(full.episodes[0]!.segmentIds).toEqual(['a']);
});

test('many segments in three threads are packed with a gap that is told', () => {
  const threads = [0, 1, 2].map((thread) => LONG.filter((_, k) => k % 3 === thread && k < 60).map((each) => ({ ...each, readyAt: null })));
  const packed = unwrap(packParallel({ threads, evergreens: LONG.slice(60, 63).map((each) => ({ ...each, readyAt: null })), rules: { ...RULES, leastResults: 0 }, dueAt: [], ...ANY_END }));
  expect(packed.gap).toBeGreaterThanOrEqual(0);
  expect(packed.gap).toBeLessThan(0.1 * Math.abs(packed.cost));
  expect(packed.episodes.flatMap((episode) => episode.segmentIds).filter((id) => Number(id) < 60)).toHaveLength(60);
});

/** The long story told in threads side by side, its segments dealt out in turn; it makes about two dozen episodes. */
function dealLong(count: number, more: Partial<ParallelProblem> = {}): ParallelProblem {
  const threads = Array.from({ length: count }, (_, thread) => LONG.filter((_each, k) => k % count === thread).map((each) => ({ ...each, readyAt: null })));
  return { threads, evergreens: [], rules: { ...RULES, runtime: { target: 16.5, min: 11.5, max: 21.5 } }, dueAt: [], ...ANY_END, ...more };
}

test.each([2, 3])('two hundred segments in %i threads are packed in at most 100 ms of the processor, close to a bound that is never above the cost', (count) => {
  const problem = dealLong(count);
  packParallel(problem);
  const times = Array.from({ length: 5 }, () => {
    const start = process.cpuUsage();
    const packed = unwrap(packParallel(problem));
    const { user, system } = process.cpuUsage(start);
    expect(packed.episodes).toHaveLength(23);
    expect(packed.bound).toBeLessThanOrEqual(packed.cost);
    expect(packed.gap).toBe(packed.cost - packed.bound);
    expect(packed.gap).toBeLessThan(0.01 * Math.abs(packed.cost));
    return (user + system) / 1000;
  });
  expect(Math.min(...times)).toBeLessThanOrEqual(100);
});

test('with few steps or many, in two threads or six, no bound is above any cost that is found', () => {
  const evergreens = [0, 1, 2].map((k) => segment(`spare ${k}`, 2 + k / 2, { hook: 0.5, hang: 0.3 + k / 5 }));
  const rules = { ...RULES, runtime: { target: 16.5, min: 11.5, max: 21.5 } };
  const problems = [dealLong(2, { rules }), dealLong(3, { rules, evergreens }), dealLong(6, { rules, cutAfter: ['50'], noCutAfter: ['7', '31'] })];
  for (const problem of problems) {
    const found = [2_000, 15_000, 60_000].map((steps) => unwrap(packParallel(problem, steps)));
    expect(Math.max(...found.map(({ bound }) => bound))).toBeLessThanOrEqual(Math.min(...found.map(({ cost }) => cost)));
    expect(found.at(-1)!.cost).toBeLessThanOrEqual(found[0]!.cost);
    for (const { cost, bound, gap, episodes } of found) {
      expect(gap).toBe(cost - bound);
      expect(episodes.reduce((sum, { terms }) => sum + terms.length + terms.hang + terms.hook + terms.result, 0)).toBeCloseTo(cost, 9);
    }
  }
});

test('side by side, what is told stays in order within each thread, and the same input has the same answer', () => {
  const problem = dealLong(3);
  const packed = unwrap(packParallel(problem));
  const told = packed.episodes.flatMap(({ segmentIds }) => segmentIds);
  for (const thread of problem.threads) expect(told.filter((id) => thread.some((each) => each.id === id))).toEqual(thread.map(({ id }) => id));
  expect(unwrap(packParallel(problem))).toEqual(packed);
});

test('fewer releases than the cheapest number of episodes are kept to', () => {
  const dueAt = Array.from({ length: 20 }, (_, k) => instant(k));
  expect(unwrap(packParallel(dealLong(2, { dueAt }))).episodes.length).toBeLessThanOrEqual(20);
});

test('threads with no segment, and more evergreens than can be looked at, are refused', () => {
  const none = packParallel({ threads: [[]], evergreens: [], rules: RULES, dueAt: [], ...ANY_END });
  expect(none.ok ? '' : none.error[0]!.code).toBe('no-segments');
  const many = packParallel({ threads: [TWELVE], evergreens: Array.from({ length: 31 }, (_, k) => segment(`e${k}`, 3)), rules: RULES, dueAt: [], ...ANY_END });
  expect(many.ok ? '' : many.error[0]!.code).toBe('too-many-evergreens');
});

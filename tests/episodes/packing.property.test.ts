import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { costOf, packParallel, packSegments, termsOf, type Packing, type PackingProblem, type ParallelProblem, type StorySegment } from '@/lib/episodes';
import { instant } from '@/lib/units';
import { packing, RULES, segment } from './segments';

const share = fc.integer({ min: 0, max: 10 }).map((tenths) => tenths / 10);

const anySegment = fc.record({ length: fc.integer({ min: 4, max: 24 }).map((quarters) => quarters / 2), isResult: fc.boolean(), hook: share, hang: share, day: fc.option(fc.integer({ min: 0, max: 6 })) });

function listSegments(drafts: readonly { length: number; isResult: boolean; hook: number; hang: number; day: number | null }[], prefix = ''): StorySegment[] {
  return drafts.map(({ day, ...draft }, index) => segment(`${prefix}${index}`, draft.length, { ...draft, readyAt: day === null ? null : instant(day) }));
}

const subset = (bits: number, segments: readonly StorySegment[]): string[] => segments.filter((_, index) => (bits & (1 << index)) !== 0).map(({ id }) => id);

/** Every set of cuts, judged one by one; costs in rising order. */
function bruteForce({ segments, rules, noCutAfter, cutAfter, dueAt, episodeCount }: PackingProblem): number[] {
  const costs: number[] = [];
  const n = segments.length;
  for (let bits = 0; bits < 1 << (n - 1); bits += 1) {
    const cuts = segments.map((_, index) => index + 1).filter((cut) => cut < n && (bits & (1 << (cut - 1))) !== 0);
    const inner = segments.slice(0, -1).map(({ id }, index) => ({ id, isCut: cuts.includes(index + 1) }));
    if (inner.some(({ id, isCut }) => (isCut && noCutAfter.includes(id)) || (!isCut && cutAfter.includes(id)))) continue;
    const edges = [0, ...cuts, n];
    const episodes = edges.slice(1).map((to, index) => segments.slice(edges[index], to));
    if (episodeCount !== null && episodes.length !== episodeCount) continue;
    if (dueAt.length > 0 && episodes.length > dueAt.length) continue;
    const judged = episodes.map((each, index) => {
      const length = each.reduce((sum, one) => sum + one.length, rules.titles);
      const results = each.filter((one) => one.isResult).length;
      const isLate = each.some((one) => one.readyAt !== null && one.readyAt > (dueAt[index] ?? Infinity));
      if (length < rules.runtime.min || length > rules.runtime.max || results < rules.leastResults || isLate) return null;
      const hang = index < episodes.length - 1 ? each.at(-1)!.hang : 0;
      return costOf(termsOf(length, results, Math.max(...each.map((one) => one.hook)), hang, rules));
    });
    if (judged.every((cost) => cost !== null)) costs.push(judged.reduce<number>((sum, cost) => sum + (cost ?? 0), 0));
  }
  return costs.toSorted((a, b) => a - b);
}

const costs = (packings: readonly Packing[]): number[] => packings.map((each) => Math.round(each.cost * 1e9) / 1e9);

test('the three best packings are the three that trying every set of cuts finds', () => {
  fc.assert(fc.property(
    fc.array(anySegment, { minLength: 1, maxLength: 9 }), fc.integer({ min: 0, max: 255 }), fc.integer({ min: 0, max: 255 }), fc.array(fc.integer({ min: 0, max: 8 }), { maxLength: 4 }),
    fc.option(fc.integer({ min: 1, max: 4 })), fc.integer({ min: 0, max: 1 }),
    (drafts, forbid, pin, dues, episodeCount, leastResults) => {
      const segments = listSegments(drafts);
      const noCutAfter = subset(forbid & (forbid >> 1), segments);
      const problem = packing(segments, {
        noCutAfter, cutAfter: subset(pin & (pin >> 1) & (pin << 1), segments).filter((id) => !noCutAfter.includes(id)),
        dueAt: dues.toSorted((a, b) => a - b).map(instant), episodeCount, rules: { ...RULES, leastResults },
      });
      const expected = bruteForce(problem).slice(0, 3).map((cost) => Math.round(cost * 1e9) / 1e9);
      const found = packSegments(problem);
      expect(found.ok ? costs(found.value) : []).toEqual(expected);
    },
  ), { numRuns: 250, seed: 7 });
});

/** Every way to go on telling, by plain recursion; the least cost. */
function bruteParallel(problem: ParallelProblem, told: readonly number[], used: ReadonlySet<string>, count: number): number {
  const { threads, evergreens, rules, dueAt } = problem;
  if (threads.every((thread, index) => told[index] === thread.length)) return 0;
  if (dueAt.length > 0 && count >= dueAt.length) return Infinity;
  const choose = (index: number): number[][] => {
    if (index === threads.length) return [[]];
    const rest = choose(index + 1);
    const ends = Array.from({ length: threads[index]!.length - told[index]! + 1 }, (_, more) => told[index]! + more);
    return ends.flatMap((end) => rest.map((others) => [end, ...others]));
  };
  let least = Infinity;
  for (const next of choose(0)) {
    const base = threads.flatMap((thread, index) => thread.slice(told[index], next[index]));
    if (base.length === 0) continue;
    const isLast = threads.every((thread, index) => next[index] === thread.length);
    for (const extra of [null, ...evergreens.filter(({ id }) => !used.has(id))]) {
      const content = extra === null ? base : [...base, extra];
      const length = content.reduce((sum, one) => sum + one.length, rules.titles);
      const results = content.filter((one) => one.isResult).length;
      const isLate = content.some((one) => one.readyAt !== null && one.readyAt > (dueAt[count] ?? Infinity));
      if (length < rules.runtime.min || length > rules.runtime.max || results < rules.leastResults || isLate) continue;
      const ends = threads.flatMap((thread, index) => (next[index]! > told[index]! ? [thread[next[index]! - 1]!] : [])).concat(extra ?? []);
      const pinned = content.filter((one) => problem.cutAfter.includes(one.id));
      const lasts = pinned.length > 0 ? ends.filter((one) => pinned.includes(one)) : ends.filter((one) => isLast || !problem.noCutAfter.includes(one.id));
      if (pinned.length > 1 || lasts.length === 0) continue;
      const hang = isLast ? 0 : Math.max(...lasts.map((one) => one.hang));
      const cost = costOf(termsOf(length, results, Math.max(...content.map((one) => one.hook)), hang, rules));
      least = Math.min(least, cost + bruteParallel(problem, next, extra === null ? used : new Set([...used, extra.id]), count + 1));
    }
  }
  return least;
}

const anyParallel: fc.Arbitrary<ParallelProblem> = fc.record({
  threads: fc.tuple(fc.array(anySegment, { minLength: 1, maxLength: 4 }), fc.array(anySegment, { maxLength: 3 }))
    .map((threads) => threads.map((drafts, index) => listSegments(drafts, `${'ab'[index]}`))),
  evergreens: fc.array(anySegment, { maxLength: 2 }).map((drafts) => listSegments(drafts, 'e')),
  rules: fc.constant({ ...RULES, leastResults: 0 }),
  dueAt: fc.array(fc.integer({ min: 0, max: 8 }), { maxLength: 4 }).map((days) => days.toSorted((a, b) => a - b).map(instant)),
  noCutAfter: fc.subarray(['a0', 'a2', 'b0', 'e0']),
  cutAfter: fc.subarray(['a1', 'b1'], { maxLength: 1 }),
});

test('threads side by side: the answer without a gap is the least that trying everything finds', () => {
  fc.assert(fc.property(anyParallel, (problem) => {
    const expected = bruteParallel(problem, problem.threads.map(() => 0), new Set(), 0);
    const found = packParallel(problem, Infinity);
    expect(found.ok ? found.value.cost : Infinity).toBeCloseTo(expected, 9);
    if (found.ok) expect(found.value.gap).toBe(0);
  }), { numRuns: 150, seed: 11 });
});

test('threads side by side: with few states kept, the best cost lies between the bound and the answer', () => {
  fc.assert(fc.property(anyParallel, (problem) => {
    const best = packParallel(problem, Infinity);
    const narrow = packParallel(problem, 1);
    if (!best.ok || !narrow.ok) return;
    expect(narrow.value.bound).toBeLessThanOrEqual(best.value.cost + 1e-9);
    expect(narrow.value.cost).toBeGreaterThanOrEqual(best.value.cost - 1e-9);
  }), { numRuns: 150, seed: 12 });
});

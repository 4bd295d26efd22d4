import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Atoms } from '@/lib/scheduling/proof/atoms';
import { ClauseBase } from '@/lib/scheduling/proof/clauses';
import { closeRelations } from '@/lib/scheduling/proof/closure';
import { Engine } from '@/lib/scheduling/proof/engine';
import { buildNetwork } from '@/lib/scheduling/proof/network';
import { BY_CLAUSE, BY_DECISION, BY_EDGE, Trail } from '@/lib/scheduling/proof/trail';
import type { CoreInstance } from '@/lib/scheduling/proof';
import { findOptimum, listPlans } from './brute-force';
import { drawFrom } from './made-instances';
import { withCurves, withMaximumLags } from './small-instances';

/** Every plan with each end of all that it allows, as values of the network's variables. */
function listSolutions(engine: Engine, instance: CoreInstance): number[][] {
  const { orders, variables, orderFirst, orderSecond } = engine.network;
  return listPlans(instance).map((plan) => {
    const end = Math.max(...plan.map((s, i) => s + instance.durations[i]!));
    return [...plan, end, ...Array.from({ length: variables - orders }, (_, k) => (plan[orderFirst[k]!]! < plan[orderSecond[k]!]! ? 1 : 0))];
  });
}

const holds = (solution: readonly number[], b: number, v: number): boolean => (b & 1 ? -solution[b >> 1]! : solution[b >> 1]!) >= v;

/** Learns as the exact search does, and looks at each clause and each bound of the root. */
function expectTruths(instance: CoreInstance): void {
  const engine = new Engine(buildNetwork(instance, closeRelations(instance)), true);
  const solutions = listSolutions(engine, instance);
  const add = engine.clauses.add.bind(engine.clauses);
  engine.clauses.add = (pairs, literals, spread) => {
    const clause = Array.from({ length: literals }, (_, k) => [pairs[2 * k]!, pairs[2 * k + 1]!] as const);
    for (const solution of solutions) expect(clause.some(([b, v]) => holds(solution, b, v))).toBe(true);
    return add(pairs, literals, spread);
  };
  const mk = engine.network.makespan;
  const optimum = findOptimum(instance);
  for (let bound = 0; bound <= instance.horizon; bound++) {
    if (engine.settleRoot()) for (const solution of solutions) for (let x = 0; x <= mk; x++) expect([engine.least(x) <= solution[x]!, solution[x]! <= engine.greatest(x)]).toEqual([true, true]);
    // From below, so that nothing learnt rests on a plan that is known.
    const outcome = engine.search(1000, 'activity', Int32Array.of(2 * mk + 1, -bound));
    expect(outcome).toBe(optimum >= 0 && bound >= optimum ? 'solution' : 'refuted');
    if (outcome === 'solution') return;
  }
}

describe('what the exact search learns', () => {
  it('holds in every plan, with minimum and maximum lags', () => {
    fc.assert(fc.property(withMaximumLags, (instance) => expectTruths({ ...instance, horizon: 6 })), { numRuns: 25 });
  });

  it('holds in every plan, with waits that depend on their start and starts that are not allowed', () => {
    fc.assert(fc.property(withCurves, (instance) => expectTruths({ ...instance, horizon: 8 })), { numRuns: 25 });
  });
});

describe('the trail of bounds', () => {
  it('raises bounds, knows since when, and takes levels back', () => {
    const trail = new Trail(Int32Array.of(0, 2), Int32Array.of(9, 5));
    expect(Array.from(trail.value)).toEqual([0, -9, 2, -5]);
    expect(trail.post(0, 3, BY_EDGE, 7)).toBe(true);
    trail.openLevel();
    expect(trail.post(0, 5, BY_CLAUSE, 8)).toBe(true);
    expect(trail.post(0, 4, BY_CLAUSE, 9)).toBe(true);
    expect(trail.post(1, -6, BY_DECISION, 0)).toBe(true);
    expect([trail.size, trail.depth, Array.from(trail.value)]).toEqual([7, 1, [5, -6, 2, -5]]);
    expect([0, 1, 3, 4, 5].map((v) => trail.entryOf(0, v))).toEqual([0, 4, 4, 5, 5]);
    expect([trail.kind[5], trail.data[5], trail.level[5], trail.older[5], trail.level[4]]).toEqual([BY_CLAUSE, 8, 1, 4, 0]);
    // Up to the greatest it fits, beyond it does not, and the failed step is kept.
    expect(trail.post(0, 7, BY_EDGE, 3)).toBe(false);
    expect([trail.failedBound, trail.failedValue, trail.failedKind, trail.failedData]).toEqual([0, 7, BY_EDGE, 3]);
    expect(trail.post(0, 6, BY_EDGE, 3)).toBe(true);
    trail.backTo(1);
    expect(trail.value[0]).toBe(6);
    trail.backTo(0);
    expect([trail.size, trail.depth, Array.from(trail.value), trail.last[0]]).toEqual([5, 0, [3, -9, 2, -5], 4]);
    trail.forgetRoot();
    expect([trail.size, trail.storedSize, trail.entryOf(0, 3), trail.reached[0], trail.last[0]]).toEqual([4, 0, 0, 3, 0]);
  });

  it('has room for any number of entries, levels and reasons', () => {
    const trail = new Trail(Int32Array.of(0), Int32Array.of(100_000));
    const at: number[] = [];
    for (let k = 1; k <= 3000; k++) {
      trail.openLevel();
      trail.post(0, 2 * k, BY_CLAUSE, k);
      at.push(trail.store(Int32Array.of(k, -k, 2 * k, 5), 2));
    }
    expect([trail.depth, trail.size, trail.entryOf(0, 4001), trail.data[2002], trail.level[3001], trail.older[3001]]).toEqual([3000, 3002, 2002, 2001, 3000, 3000]);
    expect(Array.from(trail.stored.subarray(at[2500], at[2500]! + 5))).toEqual([2, 2501, -2501, 5002, 5]);
    trail.backTo(1000);
    expect([trail.value[0], trail.storedSize, trail.store(Int32Array.of(1, 2), 1)]).toEqual([2000, 5000, 5000]);
  });
});

describe('literals by activity', () => {
  it('come the most active open one first, whatever is decided and taken back', () => {
    const draw = drawFrom(11);
    const trail = new Trail(new Int32Array(40), new Int32Array(40).fill(60));
    const atoms = new Atoms(trail);
    const active = new Map<string, number>();
    let step = 1;
    for (let turn = 0; turn < 3000; turn++) {
      const kind = draw(0, 9);
      if (kind < 4) {
        const [x, t] = [draw(0, 39), draw(1, 60)];
        if (draw(0, 1) === 0) atoms.bump(2 * x, t);
        else atoms.bump(2 * x + 1, 1 - t);
        active.set(`${x} ${t}`, (active.get(`${x} ${t}`) ?? 0) + step);
      } else if (kind < 6) {
        atoms.decay();
        step /= 0.95;
      } else if (kind < 7 && trail.depth > 0) {
        const [top, depth] = [trail.depth, draw(0, trail.depth - 1)];
        trail.backTo(depth);
        atoms.reopen(depth, top);
      } else {
        const open = [...active].filter(([name]) => {
          const [x, t] = name.split(' ').map(Number) as [number, number];
          return trail.value[2 * x]! < t && -trail.value[2 * x + 1]! >= t;
        });
        const a = atoms.next();
        expect(a >= 0).toBe(open.length > 0);
        if (a < 0) continue;
        const [x, t] = [atoms.variable[a]!, atoms.threshold[a]!];
        const most = Math.max(...open.map(([, activity]) => activity));
        expect(active.get(`${x} ${t}`)! / most).toBeGreaterThan(1 - 1e-9);
        trail.openLevel();
        if (draw(0, 1) === 0) trail.post(2 * x, t, BY_DECISION, 0);
        else trail.post(2 * x + 1, 1 - t, BY_DECISION, 0);
      }
    }
    expect(atoms.count).toBe(active.size);
  });

  it('keep their order when numbers grow too large, and however many there are', () => {
    const trail = new Trail(new Int32Array(2), new Int32Array(2).fill(5000));
    const atoms = new Atoms(trail);
    for (let t = 1; t <= 3000; t++) atoms.bump(0, t);
    atoms.bump(2, 7);
    atoms.bump(2, 7);
    // Each unit counts 1/0.95 times the one before it: after 15,000 of them no number could hold both.
    for (let k = 0; k < 15_000; k++) {
      atoms.decay();
      if (k % 500 === 0) atoms.bump(0, 1000 + k / 5);
    }
    atoms.bump(0, 2);
    const handed: number[] = [];
    for (let k = 0; k < 5; k++) {
      const a = atoms.next();
      expect(atoms.variable[a]).toBe(0);
      const t = atoms.threshold[a]!;
      handed.push(t);
      if (t === 2) trail.post(0, 2, BY_DECISION, 0);
      else trail.post(1, 1 - t, BY_DECISION, 0);
    }
    expect(handed).toEqual([2, 3900, 3800, 3700, 3600]);
    expect(atoms.count).toBe(3010);
  });

  it('leave the others their place when one that is decided grows more active', () => {
    const trail = new Trail(new Int32Array(2), new Int32Array(2).fill(9));
    const atoms = new Atoms(trail);
    atoms.bump(0, 3);
    trail.openLevel();
    trail.post(0, 3, BY_DECISION, 0);
    expect(atoms.next()).toBe(-1);
    atoms.bump(2, 4);
    for (let k = 0; k < 3; k++) atoms.bump(0, 3);
    expect(atoms.variable[atoms.next()]).toBe(1);
    trail.backTo(0);
    atoms.reopen(0, 1);
    expect(atoms.variable[atoms.next()]).toBe(0);
  });
});

interface Clause { readonly literals: readonly (readonly [number, number])[]; readonly spread: number }

/** Random clauses of distinct variables. */
function drawClauses(draw: (least: number, most: number) => number, count: number, width: number): Clause[] {
  return Array.from({ length: count }, () => {
    const variables = Array.from({ length: 8 }, (_, x) => x).toSorted(() => draw(0, 2) - 1).slice(0, draw(2, 4));
    return { spread: draw(1, 4), literals: variables.map((x) => (draw(0, 1) === 0 ? [2 * x, draw(1, width)] : [2 * x + 1, -draw(0, width - 1)] as const)) };
  });
}

/** What follows from the clauses, by looking at each again and again; null when one cannot hold. */
function followSimply(clauses: readonly Clause[], value: readonly number[]): number[] | null {
  const now = [...value];
  for (let isChanged = true; isChanged;) {
    isChanged = false;
    for (const { literals } of clauses) {
      if (literals.some(([b, v]) => now[b]! >= v)) continue;
      const open = literals.filter(([b, v]) => now[b ^ 1]! < 1 - v);
      if (open.length === 0) return null;
      if (open.length === 1) {
        [now[open[0]![0]], isChanged] = [open[0]![1], true];
      }
    }
  }
  return now;
}

const flatten = ({ literals }: Clause): Int32Array => Int32Array.from(literals.flat());

describe('learnt clauses', () => {
  it.each([[6, 1], [5000, 2]])('give what looking at each of them again and again gives, for ranges of %d', (width, seed) => {
    const draw = drawFrom(seed);
    for (let round = 0; round < 25; round++) {
      const trail = new Trail(new Int32Array(8), new Int32Array(8).fill(width));
      const base = new ClauseBase(trail);
      const clauses = drawClauses(draw, 14, width);
      for (const clause of clauses) base.add(flatten(clause), clause.literals.length, clause.spread);
      const settle = (from: number): boolean => {
        for (let e = from; e < trail.size; e++) if (!base.propagate(trail.bound[e]!, trail.reached[trail.older[e]!]!, trail.reached[e]!)) return false;
        return true;
      };
      for (let turn = 0; turn < 30; turn++) {
        const x = draw(0, 7);
        const b = 2 * x + draw(0, 1);
        const room = -trail.value[b ^ 1]! - trail.value[b]!;
        if (room === 0 || draw(0, 3) === 0) {
          trail.backTo(draw(0, trail.depth));
          continue;
        }
        const before = [trail.depth, trail.size] as const;
        trail.openLevel();
        trail.post(b, trail.value[b]! + draw(1, room), BY_DECISION, 0);
        const expected = followSimply(clauses, Array.from(trail.value));
        const isSettled = settle(before[1]);
        expect(isSettled).toBe(expected !== null);
        if (isSettled) expect(Array.from(trail.value)).toEqual(expected?.map((v) => v + 0));
        else trail.backTo(before[0]);
      }
    }
  });

  it('are thinned out: narrow ones and the most used stay, what the root settles goes', () => {
    const trail = new Trail(new Int32Array(6), new Int32Array(6).fill(9));
    const base = new ClauseBase(trail);
    const add = (spread: number, ...pairs: readonly number[]): number => base.add(Int32Array.from(pairs), pairs.length / 2, spread);
    add(3, 0, 5, 2, 5);
    const used = add(3, 0, 6, 4, 6);
    add(2, 0, 7, 6, 7);
    add(3, 2, 8, 8, 8);
    add(1, 8, 3, 10, 4, 2, 9);
    add(2, 10, 2, 8, 2);
    add(1, 2, 9, 4, 3);
    expect(base.count).toBe(7);
    base.bump(used);
    // At the root the start of 5 is at least 3 and that of 1 at most 4: one clause holds, one is left with a literal, one loses one.
    trail.post(10, 3, BY_DECISION, 0);
    trail.post(3, -4, BY_DECISION, 0);
    // Four are narrow; of the others the one used stays.
    base.reduce(5);
    expect(base.count).toBe(3);
    expect(Array.from(base.arena.subarray(0, 20))).toEqual([2, 0, 0, 6, 4, 6, 2, 1, 0, 7, 6, 7, 2, 2, 8, 3, 10, 4, 0, 0]);
    // They are still watched.
    trail.openLevel();
    trail.post(1, -3, BY_DECISION, 0);
    expect(base.propagate(1, -9, -3)).toBe(true);
    expect([trail.value[4], trail.value[6]]).toEqual([6, 7]);
    trail.backTo(0);
    // Narrow ones stay, even when fewer are asked for; what one has propagated stands first in it.
    base.reduce(1);
    expect(Array.from(base.arena.subarray(0, 14))).toEqual([2, 0, 6, 7, 0, 7, 2, 1, 8, 3, 10, 4, 0, 0]);
  });

  it('keep their order of use when numbers grow too large, and however many there are', () => {
    const trail = new Trail(new Int32Array(2), new Int32Array(2).fill(2000));
    const base = new ClauseBase(trail);
    const places = Array.from({ length: 600 }, (_, k) => base.add(Int32Array.of(0, k + 1, 2, k + 1), 2, 3));
    base.bump(places[10]!);
    // Each step counts 1/0.999 times the one before it: after 800,000 of them no number could hold all.
    for (let k = 0; k < 800_000; k++) {
      base.decay();
      if (k % 20_000 === 0) base.bump(places[50]!);
      if (k === 798_000) base.bump(places[20]!);
      if (k === 799_000) base.bump(places[30]!);
    }
    base.bump(places[40]!);
    base.reduce(3);
    expect(Array.from({ length: base.count }, (_, k) => base.arena[6 * k + 3])).toEqual([21, 31, 41]);
  });
});

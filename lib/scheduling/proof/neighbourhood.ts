import { Engine } from './engine';
import type { Branching } from './engine';
import type { CoreInstance, LagRelation } from './instance';
import { buildNetwork } from './network';
import type { Random } from './random';
import { BY_DECISION } from './trail';

const FEWEST = 8;

/**
 * Large-neighbourhood search: some activities of a good schedule are set free, the others keep the order in which they
 * hand resources on, and the exact search looks for anything shorter within a few conflicts. The number set free
 * grows while neighbourhoods are emptied and shrinks while they are not.
 */
export class Neighbourhood {
  /** Entries propagated, as a measure of work. */
  work = 0;
  private share: number;
  private readonly isFree: Uint8Array;
  private readonly n: number;
  private turn = 0;
  private centre = 0;

  constructor(
    private readonly instance: CoreInstance,
    private readonly openPairs: readonly number[],
    private readonly random: Random,
  ) {
    this.n = instance.durations.length;
    this.isFree = new Uint8Array(this.n);
    this.share = Math.min(this.n, 24);
  }

  /** Tries one neighbourhood of `start`, a schedule of `span`; true when `start` now holds one shorter than `makespan`. */
  improve(start: Int32Array, span: number, makespan: number, limit: number): boolean {
    this.choose(start, span, this.share);
    const engine = this.build(start, makespan - 1);
    if (this.turn % 4 !== 3) this.holdEarlier(engine, start);
    for (let i = 0; i < this.n; i++) engine.wish[i] = start[i]!;
    const branching: Branching = this.turn % 2 === 0 ? 'alternate' : 'activity';
    this.turn++;
    const outcome = engine.search(limit, branching);
    this.work += engine.work;
    if (outcome === 'refuted') this.share = Math.min(this.n, this.share + 1 + (this.share >> 5));
    else if (outcome === 'limit') this.share = Math.max(FEWEST, this.share - 2 - (this.share >> 5));
    return outcome === 'solution' && this.read(engine, start);
  }

  /** Rebuilds a neighbourhood in a random order without letting the schedule grow; false when that fails. */
  drift(start: Int32Array, span: number): boolean {
    this.choose(start, span, Math.max(FEWEST, this.share >> 1));
    const engine = this.build(start, span);
    for (let i = 0; i < this.n; i++) if (this.isFree[i] === 1) engine.delay[i] = this.random.below(1 + (span >> 3));
    const outcome = engine.search(30, 'earliest');
    this.work += engine.work;
    return outcome === 'solution' && this.read(engine, start);
  }

  private read(engine: Engine, start: Int32Array): boolean {
    for (let i = 0; i < this.n; i++) start[i] = engine.least(i);
    return true;
  }

  /** The instance with the order of all that is not free, to end by `horizon`. */
  private build(start: Int32Array, horizon: number): Engine {
    const pairs: number[] = [];
    for (let p = 0; p < this.openPairs.length; p += 2) {
      const a = this.openPairs[p]!;
      const b = this.openPairs[p + 1]!;
      if (this.isFree[a] === 1 || this.isFree[b] === 1) pairs.push(a, b);
    }
    const instance: CoreInstance = { ...this.instance, horizon, relations: [...this.instance.relations, ...this.keepOrder(start)] };
    return new Engine(buildNetwork(instance, null, pairs), false);
  }

  /** Work that ends before the neighbourhood stays as it is. */
  private holdEarlier(engine: Engine, start: Int32Array): void {
    const { durations } = this.instance;
    for (let i = 0; i < this.n; i++) {
      if (this.isFree[i] === 1 || 2 * start[i]! + durations[i]! >= 2 * this.centre) continue;
      engine.trail.post(2 * i, start[i]!, BY_DECISION, 0);
      engine.trail.post(2 * i + 1, -start[i]!, BY_DECISION, 0);
    }
  }

  /** Sets free the activities around a time, or around a time and those that compete with them. */
  private choose(start: Int32Array, makespan: number, count: number): void {
    const { n, isFree, random } = this;
    const { durations } = this.instance;
    const centre = random.below(makespan + 1);
    this.centre = centre;
    const noise = random.below(3) === 0 ? makespan >> 1 : makespan >> 4;
    const keys = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const away = Math.abs(2 * start[i]! + durations[i]! - 2 * centre) + random.below(noise + 1);
      keys[i] = away * n + i;
    }
    keys.sort();
    isFree.fill(0);
    for (let k = 0; k < count && k < n; k++) isFree[keys[k]! % n] = 1;
  }

  /** Lags that keep the rest in the order of the schedule: from whoever gives a unit up to whoever takes it. */
  private keepOrder(start: Int32Array): LagRelation[] {
    const { n, isFree } = this;
    const { durations, demands, capacities } = this.instance;
    const bySequence = Array.from({ length: n }, (_, i) => i).filter((i) => isFree[i] === 0 && durations[i]! > 0);
    bySequence.sort((a, b) => start[a]! - start[b]! || a - b);
    const kept: LagRelation[] = [];
    for (let k = 0; k < capacities.length; k++) {
      const holders = new Int32Array(capacities[k]!).fill(-1);
      for (const i of bySequence) {
        let need = demands[i]![k]!;
        if (need === 0) continue;
        for (let u = 0; u < holders.length && need > 0; u++) {
          const h = holders[u]!;
          if (h >= 0 && start[h]! + durations[h]! > start[i]!) continue;
          if (h >= 0 && !kept.some((r) => r.from === h && r.to === i)) kept.push({ from: h, to: i, lag: durations[h]! });
          holders[u] = i;
          need--;
        }
      }
    }
    return kept;
  }
}

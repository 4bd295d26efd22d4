import { listCliques } from './cliques';
import { closeRelations } from './closure';
import { Engine } from './engine';
import { Genetic } from './genetic';
import { assertInstance } from './instance';
import type { CoreInstance } from './instance';
import { Neighbourhood } from './neighbourhood';
import { buildNetwork, listOpenPairs } from './network';
import { Random } from './random';
import { orderForward } from './forward';

export type CoreStatus = 'optimal' | 'feasible' | 'infeasible' | 'unknown';

export interface CoreProgress {
  /** -1 before the first schedule. */
  readonly makespan: number;
  readonly lowerBound: number;
  readonly schedules: number;
  readonly conflicts: number;
  /** Steps of work: the same on every machine. */
  readonly work: number;
  /** Bounds propagated by the exact search, its part of the work. */
  readonly entries: number;
}

/** True to stop. Asked often; may look at a clock, or only at the progress, which makes the answer repeatable. */
export type CoreStop = (progress: CoreProgress) => boolean;

export interface CoreOptions {
  readonly stop: CoreStop;
  readonly seed: number;
  /** Told of every better schedule or bound. */
  readonly onProgress?: (progress: CoreProgress) => void;
  /** A schedule to begin from: it meets everything the instance asks. */
  readonly known?: ArrayLike<number>;
  /** Which share of what is allowed is used up, 0 to 1: lets the genetic search breed from as many parents as it has time for. */
  readonly share?: (progress: CoreProgress) => number;
}

export interface CoreSolution extends CoreProgress {
  readonly status: CoreStatus;
  /** Start of each activity; empty without a schedule. */
  readonly starts: readonly number[];
  readonly seed: number;
}

/** Up to this size all time that is left belongs to the proof. */
const SMALL = 40;
/** Proofs are in reach of problems up to this size; larger ones gain more from schedules. */
const LARGE = 80;
/** Work of one turn of the portfolio's parts: short at first, so that each has its chance early. */
const FIRST_SLICE = 20_000;
const LONGEST_SLICE = 640_000;
/** Schedules after which the parents of a genetic search are much alike, a parent. */
const SCHEDULES_A_PARENT = 700;
const MOST_PARENTS = 2000;
/** Large problems breed until this share of what is allowed is used up; neighbourhoods of the best have the rest. */
const BREEDING = 0.5;
/** Others, once this share has brought no proof, breed afresh from many parents until that one. */
const AFRESH_FROM = 0.25;
const AFRESH_UNTIL = 0.6;
/** Schedules a turn for a large problem while it breeds. */
const BROOD = 6000;
/** A step of the exact search costs about so many steps of schedule generation. */
const ENTRY_COST = 12;

/** Solves a core instance as well as the stopping rule allows. Throws on data that is no instance (a bug of the caller). */
export function solveCore(instance: CoreInstance, options: CoreOptions): CoreSolution {
  assertInstance(instance);
  return new Search(instance, options).run();
}

/** The portfolio: shares its best schedule and bound among exact search, genetic search and neighbourhoods. */
class Search {
  private readonly engine: Engine | null;
  private readonly genetic: Genetic | null;
  private readonly neighbourhood: Neighbourhood | null;
  private starts: Int32Array | null = null;
  /** A schedule as long as the best, moving sideways. */
  private walk: Int32Array | null = null;
  private makespan = -1;
  private lowerBound = 0;
  private isInfeasible = false;
  private isStopped = false;
  private explored = 0;
  private proofs = 0;

  constructor(
    private readonly instance: CoreInstance,
    private readonly options: CoreOptions,
  ) {
    const { demands, durations, capacities } = instance;
    const isOverdemand = demands.some((row, i) => durations[i]! > 0 && row.some((r, k) => r > capacities[k]!));
    const closure = isOverdemand ? null : closeRelations(instance);
    if (isOverdemand || (closure && closure.cycleAt >= 0)) {
      this.isInfeasible = true;
      this.engine = null;
      this.genetic = null;
      this.neighbourhood = null;
      return;
    }
    const random = new Random(options.seed);
    const pairs = listOpenPairs(instance, closure);
    this.engine = new Engine(buildNetwork(instance, closure, pairs), true, listCliques(instance, closure));
    const order = orderForward(instance);
    this.genetic = order ? new Genetic(instance, order, random) : null;
    this.neighbourhood = new Neighbourhood(instance, pairs, random);
  }

  run(): CoreSolution {
    const { engine, genetic, neighbourhood } = this;
    if (engine && neighbourhood && this.settle(engine)) {
      const { known } = this.options;
      if (known) this.offer(Int32Array.from(known), makespanOf(this.instance, known));
      if (genetic) this.evolve(genetic, 3000);
      const isLarge = this.instance.durations.length > LARGE;
      this.prove(engine, 8 * FIRST_SLICE);
      if (genetic && isLarge) this.breed(genetic, BREEDING);
      let isFresh = isLarge || this.instance.durations.length <= SMALL;
      const turn = isLarge ? { prove: 1, explore: 2, evolve: 5 } : { prove: 8, explore: 2, evolve: 2 };
      for (let slice = FIRST_SLICE; !this.isDone(); slice = Math.min(LONGEST_SLICE, slice * 2)) {
        if (genetic && !isFresh && this.share() >= AFRESH_FROM) {
          isFresh = true;
          genetic.renew();
          this.breed(genetic, AFRESH_UNTIL);
        }
        this.prove(engine, this.starts ? turn.prove * slice : slice);
        if (this.starts && !this.isDone()) this.explore(neighbourhood, turn.explore * slice);
        if (genetic && !this.isDone()) this.evolve(genetic, Math.ceil((turn.evolve * slice) / this.instance.durations.length));
      }
    }
    const progress = this.progress();
    const status = this.isInfeasible ? 'infeasible' : this.starts === null ? 'unknown' : this.makespan === this.lowerBound ? 'optimal' : 'feasible';
    return { ...progress, status, starts: this.starts ? Array.from(this.starts) : [], seed: this.options.seed };
  }

  private settle(engine: Engine): boolean {
    if (!engine.settleRoot()) this.isInfeasible = true;
    else this.lowerBound = engine.least(engine.network.makespan);
    return !this.isInfeasible;
  }

  private isDone(): boolean {
    if (this.isInfeasible || this.isStopped || (this.starts !== null && this.makespan <= this.lowerBound)) return true;
    this.isStopped = this.options.stop(this.progress());
    return this.isStopped;
  }

  private progress(): CoreProgress {
    const schedules = this.genetic?.passes ?? 0;
    const entries = (this.engine?.work ?? 0) + (this.neighbourhood?.work ?? 0);
    return {
      makespan: this.makespan,
      lowerBound: this.lowerBound,
      schedules,
      conflicts: this.engine?.conflicts ?? 0,
      work: entries + schedules * this.instance.durations.length,
      entries,
    };
  }

  private tell(): void {
    this.options.onProgress?.(this.progress());
  }

  /** Takes a schedule when it is better; the exact search then looks below it. */
  private offer(starts: Int32Array, makespan: number): void {
    if (this.starts !== null && makespan >= this.makespan) return;
    this.starts = starts.slice();
    this.walk = starts.slice();
    this.makespan = makespan;
    const engine = this.engine!;
    for (let x = 0; x < engine.network.activities; x++) engine.wish[x] = starts[x]!;
    engine.wish[engine.network.makespan] = makespan - 1;
    for (let x = engine.network.orders; x < engine.network.variables; x++) {
      const k = x - engine.network.orders;
      engine.wish[x] = starts[engine.network.orderFirst[k]!]! < starts[engine.network.orderSecond[k]!]! ? 1 : 0;
    }
    if (makespan > this.lowerBound && !engine.restrict(2 * engine.network.makespan + 1, 1 - makespan)) this.raise(makespan);
    this.tell();
  }

  private raise(bound: number): void {
    if (bound <= this.lowerBound) return;
    this.lowerBound = bound;
    this.tell();
  }

  private evolve(genetic: Genetic, passes: number): void {
    const last = genetic.passes + passes;
    while (genetic.passes < last) {
      for (let k = 0; k < 4; k++) genetic.step();
      if (genetic.best >= 0) this.offer(genetic.bestStart, genetic.best);
      if (this.isDone()) return;
    }
  }

  private share(): number {
    return this.options.share?.(this.progress()) ?? 0;
  }

  /** Breeds from as many parents as can come to an end by `until`; a longer search needs more of them. */
  private breed(genetic: Genetic, until: number): void {
    if (!this.options.share) return;
    const begin = this.share();
    const before = genetic.passes;
    for (let turn = 0; !this.isDone(); turn++) {
      const share = this.share();
      if (share >= until) return;
      // The first schedules tell how many there will be; the first turns run slower than the rest.
      const ahead = share > begin ? ((until - begin) * (genetic.passes - before)) / (share - begin) : 0;
      if (turn < 3) genetic.enlarge(Math.min(MOST_PARENTS, Math.floor(ahead / SCHEDULES_A_PARENT)));
      this.evolve(genetic, BROOD);
    }
  }

  /** Neighbourhoods of the best schedule, of others as long as it, and of parents that are nearly as good. */
  private explore(neighbourhood: Neighbourhood, slice: number): void {
    const last = neighbourhood.work + slice / ENTRY_COST;
    while (neighbourhood.work < last) {
      this.explored++;
      const starts = this.walk!.slice();
      let span = this.makespan;
      if (this.genetic && this.explored % 4 === 0) {
        span = this.genetic.recall(starts);
        if (span < 0) return;
      } else if (this.explored % 2 === 0 && neighbourhood.drift(starts, span)) {
        this.walk!.set(starts);
      }
      if (neighbourhood.improve(starts, span, this.makespan, 100)) {
        this.offer(starts, makespanOf(this.instance, starts));
        this.genetic?.adopt(starts);
      }
      if (this.isDone()) return;
    }
  }

  /** One slice of exact search: below the best schedule, in every eighth turn just above the bound. */
  private prove(engine: Engine, slice: number): void {
    const mk = engine.network.makespan;
    const last = engine.work + slice / ENTRY_COST;
    this.proofs++;
    const isFromBelow = this.starts !== null && this.proofs % 8 === 7;
    while (engine.work < last) {
      const tried = this.lowerBound;
      const bound = Int32Array.of(2 * mk + 1, -tried);
      const outcome = engine.search(20_000, 'activity', isFromBelow ? bound : undefined, () => engine.work >= last || this.isDone());
      if (outcome === 'solution') this.offerFound(engine);
      if (!engine.settleRoot()) {
        if (this.starts === null) this.isInfeasible = true;
        else this.raise(this.makespan);
        return;
      }
      this.raise(engine.least(mk));
      if (outcome === 'refuted') this.raise(tried + 1);
      if (this.isDone()) return;
    }
  }

  private offerFound(engine: Engine): void {
    const starts = new Int32Array(engine.network.activities);
    for (let i = 0; i < starts.length; i++) starts[i] = engine.least(i);
    this.offer(starts, makespanOf(this.instance, starts));
  }
}

/** Latest end. */
function makespanOf(instance: CoreInstance, starts: ArrayLike<number>): number {
  let latest = 0;
  for (let i = 0; i < starts.length; i++) latest = Math.max(latest, starts[i]! + instance.durations[i]!);
  return latest;
}

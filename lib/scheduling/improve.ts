import { Constructor } from './construct';
import { Incumbent } from './incumbent';
import { listByKey, Sorter } from './list-order';
import { LocalSearch } from './local-search';
import type { Model } from './model';
import { TERMS } from './objective';
import type { Order } from './order';
import { PLACED } from './placer';
import type { Bounds } from './propagate';
import type { Random } from './random';
import { makePriorities } from './rules';
import { compareTerms } from './score';
import { Urgency } from './urgency';

/** A member of the population: a list of activities, which of them keep their previous start, and its value. */
interface Plan {
  readonly list: Int32Array;
  readonly steady: Uint8Array;
  readonly terms: Float64Array;
}

/** Time running backwards, for justification; see `reverse`. */
export interface Mirror {
  readonly model: Model;
  readonly order: Order;
  readonly bounds: Bounds;
}

export interface SearchInput {
  readonly model: Model;
  readonly order: Order;
  readonly bounds: Bounds;
  readonly mirror: Mirror | null;
  readonly random: Random;
  /** Called after each schedule; true ends the search. */
  readonly isOver: () => boolean;
}

const POPULATION = 40;

/**
 * Anytime search over activity lists: priority rules, random sampling around them, then a steady-state genetic
 * search with two-point crossover. Where time may run backwards each list is justified to the right and back.
 */
export class Search {
  readonly incumbent: Incumbent;
  schedulesTried = 0;
  private readonly forward: Constructor;
  private readonly backward: Constructor | null;
  private readonly sorter: Sorter;
  private readonly mirrorSorter: Sorter;
  private readonly scratch: Int32Array;
  private readonly keys: Float64Array;
  private readonly priorities: readonly Float64Array[];
  private readonly population: Plan[] = [];
  private readonly isMarked: Uint8Array;
  private readonly canBeSteady: boolean;

  constructor(private readonly input: SearchInput) {
    const { model, order, bounds, mirror } = input;
    this.forward = new Constructor(model, order, bounds);
    this.backward = mirror === null ? null : new Constructor(mirror.model, mirror.order, mirror.bounds);
    this.incumbent = new Incumbent(model);
    this.sorter = new Sorter(order);
    this.mirrorSorter = new Sorter(mirror === null ? order : mirror.order);
    this.scratch = new Int32Array(model.count);
    this.keys = new Float64Array(model.count);
    this.isMarked = new Uint8Array(model.count);
    this.priorities = makePriorities(model, order, bounds);
    this.canBeSteady = model.previous.some((at) => at >= 0);
  }

  /** Runs until the input says it is over; at least one schedule is built. */
  run(): void {
    if (this.backward === null) {
      this.runLocal();
      return;
    }
    if (this.seedPopulation()) return;
    for (;;) {
      const child = this.breed();
      const isOver = this.evaluate(child);
      this.replaceWorst(child);
      if (isOver) return;
    }
  }

  /** Priority rules, the best of them made to see what is late, then moves from there. */
  private runLocal(): void {
    const { model, order, random } = this.input;
    const steady = new Uint8Array(model.count).fill(this.canBeSteady ? 1 : 0);
    const tools = { model, order, random, builder: this.forward, incumbent: this.incumbent };
    let isDone = false;
    const isOver = () => {
      this.schedulesTried += 1;
      isDone = this.input.isOver();
      return isDone;
    };
    const terms = new Float64Array(TERMS).fill(Infinity);
    let best = this.priorities[0]!;
    const { rank } = model.objective;
    // Where the finish outweighs changes, the accepted places are worth no more than a try.
    const free = this.canBeSteady && rank.moved > rank.makespan ? [new Uint8Array(model.count)] : [];
    for (const kept of [steady.slice(), ...free]) {
      for (const rule of this.priorities) {
        this.forward.build(listByKey(order, rule), kept);
        const found = this.incumbent.offer(this.forward.decider);
        if (compareTerms(found, terms) < 0) {
          best = rule;
          steady.set(kept);
          terms.set(found);
        }
        if (isOver()) return;
      }
    }
    const list = terms[model.objective.rank.tardiness]! > 0 ? new Urgency({ ...tools, isOver }).run(best, steady) : listByKey(order, best);
    if (isDone) return;
    const local = new LocalSearch(tools);
    local.start(list, steady);
    while (!isOver()) local.step();
  }

  private seedPopulation(): boolean {
    const { order } = this.input;
    for (let k = 0; k < POPULATION; k += 1) {
      const rule = this.priorities[k];
      const plan = this.makePlan(rule === undefined ? this.sample() : listByKey(order, rule));
      const isOver = this.evaluate(plan);
      this.population.push(plan);
      if (isOver) return true;
    }
    return false;
  }

  private makePlan(list: Int32Array): Plan {
    return { list, steady: new Uint8Array(list.length).fill(this.canBeSteady ? 1 : 0), terms: new Float64Array(TERMS) };
  }

  /** A list near one of the first rules, its keys shaken at random; now and then any order at all. */
  private sample(): Int32Array {
    const { model, order, random } = this.input;
    const base = this.priorities[random.below(Math.min(3, this.priorities.length))]!;
    let low = Infinity;
    let high = -Infinity;
    for (const key of base) {
      low = Math.min(low, key);
      high = Math.max(high, key);
    }
    const shake = Math.max(1, Math.floor((2 * (high - low)) / (1 + random.below(24))));
    const isFree = random.below(5) === 0;
    for (let i = 0; i < model.count; i += 1) this.keys[i] = isFree ? random.next() : base[i]! + random.below(shake);
    return listByKey(order, this.keys);
  }

  /** Builds the schedule of a plan, notes its value and writes the order of its starts back into its list. */
  private evaluate(plan: Plan): boolean {
    this.forward.build(plan.list, plan.steady);
    plan.terms.set(this.incumbent.offer(this.forward.decider));
    this.schedulesTried += 1;
    if (this.input.isOver()) return true;
    if (this.backward !== null && this.justify(plan)) return true;
    this.rewrite(plan);
    return false;
  }

  private rewrite(plan: Plan): void {
    const { placer } = this.forward;
    const { model } = this.input;
    for (let k = 0; k < model.count; k += 1) {
      const activity = plan.list[k]!;
      // What was left out keeps its place in the list, roughly.
      this.keys[activity] = placer.status[activity] === PLACED ? placer.start[activity]! : this.keyNear(plan.list, k);
    }
    this.sorter.sort(this.keys, plan.list);
  }

  private keyNear(list: Int32Array, position: number): number {
    return position === 0 ? 0 : this.keys[list[position - 1]!]!;
  }

  /** Right: latest ends first, against the end. Left: by the starts that gives. Never worse than it was. */
  private justify(plan: Plan): boolean {
    const { model } = this.input;
    const { backward, forward } = this;
    if (backward === null) return false;
    for (let i = 0; i < model.count; i += 1) this.keys[i] = -forward.placer.end[i]!;
    this.mirrorSorter.sort(this.keys, this.scratch);
    backward.build(this.scratch, plan.steady);
    for (let i = 0; i < model.count; i += 1) this.keys[i] = -backward.placer.end[i]!;
    this.sorter.sort(this.keys, this.scratch);
    forward.build(this.scratch, plan.steady);
    const terms = this.incumbent.offer(forward.decider);
    this.schedulesTried += 2;
    if (compareTerms(terms, plan.terms) <= 0) plan.terms.set(terms);
    return this.input.isOver();
  }

  private choose(): Plan {
    const { random } = this.input;
    const a = this.population[random.below(this.population.length)]!;
    const b = this.population[random.below(this.population.length)]!;
    return compareTerms(a.terms, b.terms) <= 0 ? a : b;
  }

  private breed(): Plan {
    const { random } = this.input;
    const mother = this.choose();
    const father = this.choose();
    const child = this.makePlan(mother.list.slice());
    if (mother !== father) this.cross(mother, father, child);
    this.mutate(child.list);
    if (this.canBeSteady) this.crossSteady(mother, father, child);
    else if (random.below(20) === 0) child.list.set(this.sample());
    return child;
  }

  /** Two-point crossover (Hartmann 1998): mother, then a stretch in the father's order, then mother again. */
  private cross(mother: Plan, father: Plan, child: Plan): void {
    const { random } = this.input;
    const count = mother.list.length;
    const a = random.below(count + 1);
    const b = random.below(count + 1);
    const first = Math.min(a, b);
    const second = Math.max(a, b);
    const { isMarked } = this;
    isMarked.fill(0);
    for (let k = 0; k < first; k += 1) isMarked[mother.list[k]!] = 1;
    let at = first;
    for (let k = 0; k < count && at < second; k += 1) {
      const activity = father.list[k]!;
      if (isMarked[activity] === 1) continue;
      isMarked[activity] = 1;
      child.list[at] = activity;
      at += 1;
    }
    for (let k = 0; k < count && at < count; k += 1) {
      const activity = mother.list[k]!;
      if (isMarked[activity] === 1) continue;
      isMarked[activity] = 1;
      child.list[at] = activity;
      at += 1;
    }
  }

  /** Moves a few activities to other places between what comes before and after them. */
  private mutate(list: Int32Array): void {
    const { random } = this.input;
    const moves = random.below(3) === 0 ? 1 + random.below(3) : 0;
    for (let m = 0; m < moves; m += 1) this.shift(list, random.below(list.length));
  }

  private shift(list: Int32Array, position: number): void {
    const { order, random } = this.input;
    const activity = list[position]!;
    let low = position;
    while (low > 0 && !order.before[activity]!.includes(list[low - 1]!)) low -= 1;
    let high = position;
    while (high < list.length - 1 && !order.after[activity]!.includes(list[high + 1]!)) high += 1;
    const target = low + random.below(high - low + 1);
    if (target < position) list.copyWithin(target + 1, target, position);
    else list.copyWithin(position, position + 1, target + 1);
    list[target] = activity;
  }

  /** Each flag from either parent; now and then one is changed. */
  private crossSteady(mother: Plan, father: Plan, child: Plan): void {
    const { random } = this.input;
    for (let i = 0; i < child.steady.length; i += 1) {
      child.steady[i] = random.below(2) === 0 ? mother.steady[i]! : father.steady[i]!;
    }
    const changes = random.below(3);
    for (let k = 0; k < changes; k += 1) {
      const i = random.below(child.steady.length);
      child.steady[i] = 1 - child.steady[i]!;
    }
  }

  private replaceWorst(child: Plan): void {
    let worst = 0;
    for (let k = 0; k < this.population.length; k += 1) {
      const comparison = compareTerms(this.population[k]!.terms, child.terms);
      // A twin adds nothing.
      if (comparison === 0) return;
      if (compareTerms(this.population[k]!.terms, this.population[worst]!.terms) > 0) worst = k;
    }
    if (compareTerms(child.terms, this.population[worst]!.terms) < 0) this.population[worst] = child;
  }
}

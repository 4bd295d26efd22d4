import { FAR } from './calendar-index';
import type { Model } from './model';

/** The partial schedule, as far as choosing people needs to know it. */
interface Occupation {
  readonly model: Model;
  readonly load: Float64Array;
  /** 0 when so many units are free for the pieces looked at last; else a later start, before which there is none that has them. */
  waitFor(activity: number, person: number, units: number, t: number): number;
}

/**
 * Chooses people for an activity: those free for all its worked minutes with enough left of what they may take of it, those of the accepted plan first, then the least loaded,
 * matched to the slots by augmenting paths so that a scarce skill is not wasted.
 */
export class CrewChoice {
  /** Resource chosen for each slot of the activity asked about last. */
  readonly pick: Int32Array;
  private readonly slotOf: Int32Array;
  private readonly visited: Int32Array;
  private readonly asked: Int32Array;
  private readonly nextFree: Int32Array;
  private readonly wished: Int32Array;
  /** Search in which `nextFree` of a person was found. */
  private readonly search: Int32Array;
  private searches = 0;
  private stamp = 0;
  private round = 0;
  private first = 0;

  constructor(private readonly placer: Occupation) {
    const { crew, count, resourceCount } = placer.model;
    let most = 0;
    for (let i = 0; i < count; i += 1) most = Math.max(most, crew.from[i + 1]! - crew.from[i]!);
    this.pick = new Int32Array(most);
    this.slotOf = new Int32Array(resourceCount);
    this.visited = new Int32Array(resourceCount);
    this.asked = new Int32Array(resourceCount);
    this.nextFree = new Int32Array(resourceCount);
    this.search = new Int32Array(resourceCount);
    this.wished = new Int32Array(resourceCount);
  }

  /** To be called before the starts of another activity, or another partial schedule, are asked about. */
  begin(): void {
    this.searches += 1;
  }

  /** 0 when a crew is found (see {@link pick}); else the next start at which somebody else becomes free. */
  choose(activity: number, t: number): number {
    const { crew } = this.placer.model;
    this.stamp += 1;
    this.first = crew.from[activity]!;
    const slots = crew.from[activity + 1]! - this.first;
    let next = FAR;
    for (let row = crew.poolFrom[this.first]!; row < crew.poolFrom[this.first + slots]!; row += 1) {
      const person = crew.pool[row]!;
      if (this.asked[person] === this.stamp) continue;
      this.asked[person] = this.stamp;
      this.slotOf[person] = -1;
      // What was found out about somebody at an earlier start of the same search still holds.
      if (this.search[person] !== this.searches || this.nextFree[person]! <= t) {
        this.nextFree[person] = this.waitFor(activity, person, t);
        this.search[person] = this.searches;
      }
      const wait = this.nextFree[person]!;
      if (wait > t && wait < next) next = wait;
    }
    if (this.pickPrevious(activity, slots, t)) return 0;
    for (let slot = 0; slot < slots; slot += 1) this.pick[slot] = -1;
    for (let slot = 0; slot < slots; slot += 1) {
      this.round += 1;
      if (!this.assign(slot, t)) return next;
    }
    return 0;
  }

  /** The people of the accepted plan, slot by slot, when all of them are free; marks them as wished for otherwise. */
  private pickPrevious(activity: number, slots: number, t: number): boolean {
    const { crew, previousCrew } = this.placer.model;
    if (previousCrew.isGiven[activity] === 0) return false;
    const first = previousCrew.from[activity]!;
    let found = 0;
    for (let k = first; k < previousCrew.from[activity + 1]!; k += 1) {
      const person = previousCrew.resource[k]!;
      if (person < 0 || this.asked[person] !== this.stamp) continue;
      this.wished[person] = this.stamp;
      const slot = this.first + k - first;
      if (k - first < slots && this.nextFree[person]! <= t && crew.pool.subarray(crew.poolFrom[slot]!, crew.poolFrom[slot + 1]!).includes(person)) {
        this.pick[k - first] = person;
        found += 1;
      }
    }
    return found === slots && previousCrew.from[activity + 1]! - first === slots;
  }

  /** 0 when the person is free for the pieces looked at last, else when to try again. */
  private waitFor(activity: number, person: number, t: number): number {
    const { demands } = this.placer.model;
    let units = 1;
    for (let row = demands.from[activity]!; row < demands.from[activity + 1]!; row += 1) {
      if (demands.resource[row] === person) units += demands.amount[row]!;
    }
    return this.placer.waitFor(activity, person, units, t);
  }

  /** Gives the slot its least loaded free person, moving others along when that helps (Kuhn's algorithm). */
  private assign(slot: number, t: number): boolean {
    const { crew } = this.placer.model;
    for (;;) {
      let best = -1;
      for (let row = crew.poolFrom[this.first + slot]!; row < crew.poolFrom[this.first + slot + 1]!; row += 1) {
        const person = crew.pool[row]!;
        if (this.visited[person] === this.round || this.nextFree[person]! > t) continue;
        if (best < 0 || this.isBetter(person, best)) best = person;
      }
      if (best < 0) return false;
      this.visited[best] = this.round;
      const holder = this.slotOf[best]!;
      if (holder >= 0 && !this.assign(holder, t)) continue;
      this.slotOf[best] = slot;
      this.pick[slot] = best;
      return true;
    }
  }

  private isBetter(person: number, than: number): boolean {
    const isTaken = this.slotOf[person]! >= 0;
    if (isTaken !== this.slotOf[than]! >= 0) return !isTaken;
    const isWished = this.wished[person] === this.stamp;
    if (isWished !== (this.wished[than] === this.stamp)) return isWished;
    return this.placer.load[person]! < this.placer.load[than]!;
  }
}

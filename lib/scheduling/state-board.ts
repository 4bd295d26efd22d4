import type { Model } from './model';
import { Profile } from './profile';

const ROOM = 1 << 20;

/** Who has which medium in which state: for each state, the times when some other state rules it out. */
export class StateBoard {
  /** Medium that ruled out the start asked about last. */
  medium = -1;
  /** Room for each state of each medium, medium by medium. */
  private readonly room: readonly Profile[];
  /** First row of each medium in `room`. */
  private readonly first: Int32Array;
  /** Row in `room` of each state need of the model. */
  private readonly own: Int32Array;

  constructor(private readonly model: Model) {
    const { medium, mediumCount, state } = model.states;
    const statesOf: number[][] = Array.from({ length: mediumCount }, () => []);
    medium.forEach((one, row) => {
      if (!statesOf[one]!.includes(state[row]!)) statesOf[one]!.push(state[row]!);
    });
    this.first = new Int32Array(mediumCount + 1);
    statesOf.forEach((list, one) => {
      this.first[one + 1] = this.first[one]! + list.length;
    });
    this.own = Int32Array.from(medium, (one, row) => this.first[one]! + statesOf[one]!.indexOf(state[row]!));
    this.room = Array.from({ length: this.first[mediumCount]! }, () => new Profile(ROOM, undefined));
  }

  clear(): void {
    for (const profile of this.room) profile.clear();
  }

  /** Next start worth trying when another state is in the way of [t, end), tails included; else 0. */
  conflict(activity: number, t: number, end: number): number {
    const { states } = this.model;
    for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) {
      const next = this.room[this.own[row]!]!.conflictEnd(t, end + states.tail[row]!, ROOM);
      if (next === 0) continue;
      this.medium = states.medium[row]!;
      return next;
    }
    return 0;
  }

  /** Rules out (sign 1) the other states while the activity and its tails last, or no longer (sign -1). */
  occupy(activity: number, from: number, end: number, sign: number): void {
    const { states } = this.model;
    for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) {
      const medium = states.medium[row]!;
      const own = this.own[row]!;
      for (let other = this.first[medium]!; other < this.first[medium + 1]!; other += 1) {
        if (other !== own) this.room[other]!.take(from, end + states.tail[row]!, sign);
      }
    }
  }
}

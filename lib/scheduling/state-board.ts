import type { Model } from './model';
import { Profile } from './profile';
import { stateEnd } from './timing';

const ROOM = 1 << 20;

/** Who has which medium in which state: for each state, the times when some other state rules it out. */
export class StateBoard {
  /** Room for each state of each medium: row medium * stateCount + state. */
  private readonly room: readonly Profile[];
  /** Medium that ruled out the start asked about last. */
  medium = -1;

  constructor(private readonly model: Model) {
    const { mediumCount, stateCount } = model.states;
    this.room = Array.from({ length: mediumCount * stateCount }, () => new Profile(ROOM, undefined));
  }

  clear(): void {
    for (const profile of this.room) profile.clear();
  }

  /** Next start worth trying when another state is in the way of [t, end), tails included; else 0. */
  conflict(activity: number, t: number, end: number): number {
    const { states } = this.model;
    for (let row = states.from[activity]!; row < states.from[activity + 1]!; row += 1) {
      const room = this.room[states.medium[row]! * states.stateCount + states.state[row]!]!;
      const next = room.conflictEnd(t, stateEnd(states, row, end), ROOM);
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
      const first = states.medium[row]! * states.stateCount;
      for (let state = 0; state < states.stateCount; state += 1) {
        if (state !== states.state[row]) this.room[first + state]!.take(from, stateEnd(states, row, end), sign);
      }
    }
  }
}

import { FAR } from './calendar-index';
import type { Model } from './model';
import type { Profile } from './profile';
import { PLACED } from './status';

/** What of a partial schedule a hold depends on. */
interface Placed {
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly status: Uint8Array;
  readonly profiles: readonly Profile[];
}

/** What the holds have taken so far: from the start of their first activity to the end of their last, or as far as it is placed. */
export class HoldBook {
  /** Elapsed end of what each hold has taken so far; -1: nothing yet. */
  readonly taken: Int32Array;
  /** Hold that was in the way last. */
  met = -1;
  /** Set when the last search failed on a hold: which one, and from when its first activity must start. */
  blame = -1;
  blameFrom = 0;

  constructor(private readonly model: Model, private readonly placed: Placed) {
    this.taken = new Int32Array(model.holds.count).fill(-1);
  }

  clear(): void {
    this.taken.fill(-1);
  }

  /** Extends a hold to `until` (the horizon, when its last activity is left out). */
  extend(hold: number, until: number): void {
    const { holds } = this.model;
    const taken = this.taken[hold]!;
    if (taken < 0 || taken >= until) return;
    this.placed.profiles[holds.resource[hold]!]!.take(taken, until, holds.amount[hold]!);
    this.taken[hold] = until;
  }

  /** First minute from which the rest of a hold up to `until` is free; 0: it is free as it stands. */
  conflict(hold: number, until: number): number {
    const { holds } = this.model;
    return this.placed.profiles[holds.resource[hold]!]!.conflictEnd(this.taken[hold]!, until, holds.amount[hold]!);
  }

  /** Next start worth trying when the activity on [t, end) has no room for its holds; else 0. */
  conflictAt(activity: number, t: number, end: number): number {
    const { holds } = this.model;
    const { placed } = this;
    for (const hold of holds.byActivity[activity]!) {
      const profile = placed.profiles[holds.resource[hold]!]!;
      const amount = holds.amount[hold]!;
      const isFirst = holds.from[hold] === activity;
      const other = isFirst ? holds.to[hold]! : holds.from[hold]!;
      const isOtherPlaced = placed.status[other] === PLACED;
      this.met = hold;
      if (isFirst) {
        const next = profile.conflictEnd(t, isOtherPlaced ? Math.max(end, placed.end[other]!) : end, amount);
        if (next > 0) return next;
      } else if (isOtherPlaced) {
        const next = profile.conflictEnd(this.taken[hold]!, end, amount);
        if (next === 0) continue;
        // It only grows with a later end: the first activity has to move.
        this.blame = hold;
        this.blameFrom = next;
        return FAR;
      }
    }
    return 0;
  }

  /** Takes (sign 1) or gives back (sign -1) what the placed activity's holds use. */
  occupy(activity: number, sign: number): void {
    const { holds } = this.model;
    const { placed, taken } = this;
    for (const hold of holds.byActivity[activity]!) {
      const isFirst = holds.from[hold] === activity;
      const other = isFirst ? holds.to[hold]! : holds.from[hold]!;
      const isOtherPlaced = placed.status[other] === PLACED;
      if (!isFirst && !isOtherPlaced) continue;
      const first = holds.from[hold]!;
      const firstEnd = Math.max(placed.start[first]!, placed.end[first]!);
      const wholeEnd = isOtherPlaced ? Math.max(firstEnd, placed.end[holds.to[hold]!]!) : firstEnd;
      const profile = placed.profiles[holds.resource[hold]!]!;
      const amount = holds.amount[hold]!;
      if (sign > 0) {
        const from = taken[hold]! < 0 ? placed.start[first]! : taken[hold]!;
        profile.take(from, wholeEnd, amount);
        taken[hold] = Math.max(from, wholeEnd);
      } else {
        const keep = isFirst ? placed.start[first]! : firstEnd;
        profile.take(keep, taken[hold]!, -amount);
        taken[hold] = isFirst ? -1 : firstEnd;
      }
    }
  }
}

import { CAUSE_HOLD, CAUSE_WAITS, CAUSE_WINDOW } from './cause';
import { ELAPSED, type Model } from './model';
import { PLACED, type Placer } from './placer';
import { earliestOverArc } from './propagate';

/** A schedule just built. */
interface Built {
  readonly model: Model;
  readonly placer: Placer;
  leaveOut(activity: number, cause: number, at: number): void;
}

/** The last step of a schedule: what lost its footing goes out, until all that stands is sound. */
export class Orphans {
  constructor(private readonly built: Built) {}

  /** Takes out what was placed (pins as a rule) although something it needs, or a window it opened, was left out. Says whether it changed anything. */
  drop(): boolean {
    const { model, placer } = this.built;
    let rounds = 0;
    for (let isChanged = true; isChanged; rounds += 1) {
      isChanged = false;
      for (let arc = 0; arc < model.arcs.count; arc += 1) {
        const to = model.arcs.to[arc]!;
        if (placer.status[model.arcs.from[arc]!] === PLACED || placer.status[to] !== PLACED) continue;
        const event = model.arcs.isToEnd[arc] === 1 ? placer.end[to]! : placer.start[to]!;
        const minutes = model.arcs.minutes[arc]!;
        if (model.arcs.kind[arc] === ELAPSED && minutes < 0 && event >= model.horizon + minutes) continue;
        this.dropOne(to, model.arcs.isMax[arc] === 1 ? CAUSE_WINDOW : CAUSE_WAITS, arc);
        isChanged = true;
      }
      isChanged = this.dropOrders() || isChanged;
      for (let hold = 0; hold < model.holds.count; hold += 1) isChanged = this.dropHold(hold) || isChanged;
    }
    return rounds > 1;
  }

  /** Takes out what stands against an arc between two placed activities (a pin that came too early). */
  private dropOrders(): boolean {
    const { model, placer } = this.built;
    let isChanged = false;
    for (let arc = 0; arc < model.arcs.count; arc += 1) {
      const from = model.arcs.from[arc]!;
      const to = model.arcs.to[arc]!;
      if (model.pin[to]! < 0) continue;
      if (placer.status[from] !== PLACED || placer.status[to] !== PLACED) continue;
      if (earliestOverArc(model, arc, placer.start[from]!) <= placer.start[to]!) continue;
      this.dropOne(to, CAUSE_WAITS, arc);
      isChanged = true;
    }
    return isChanged;
  }

  private dropOne(activity: number, cause: number, at: number): void {
    this.built.placer.remove(activity);
    this.built.leaveOut(activity, cause, at);
  }

  private dropHold(hold: number): boolean {
    const { model, placer } = this.built;
    const first = model.holds.from[hold]!;
    const last = model.holds.to[hold]!;
    if (placer.status[first] !== PLACED || placer.status[last] === PLACED) return false;
    if (placer.holds.taken[hold]! >= model.horizon) return false;
    if (placer.holds.conflict(hold, model.horizon) === 0) placer.holds.extend(hold, model.horizon);
    else this.dropOne(first, CAUSE_HOLD, hold);
    return true;
  }
}

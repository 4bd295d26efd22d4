import { replay } from './describe';
import type { Model } from './model';
import { PLACED, type Placer } from './placer';
import type { Schedule } from './problem';

/** A finished schedule in the model's arrays. */
export interface Setting {
  readonly model: Model;
  readonly index: ReadonlyMap<string, number>;
  readonly status: Uint8Array;
  readonly start: Int32Array;
  readonly end: Int32Array;
  readonly crew: Int32Array;
}

/** A schedule back in the model's arrays. */
export function readSchedule(model: Model, schedule: Schedule): Setting {
  const { problem } = model;
  const index = new Map(problem.activities.map((activity, i) => [activity.id, i]));
  const resources = new Map(problem.resources.map((resource, r) => [resource.id, r]));
  const setting: Setting = {
    model,
    index,
    status: new Uint8Array(model.count),
    start: new Int32Array(model.count),
    end: new Int32Array(model.count),
    crew: new Int32Array(model.crew.from[model.count]!).fill(-1),
  };
  for (const placement of schedule.placements) {
    const i = index.get(placement.activity);
    if (i === undefined) continue;
    setting.status[i] = PLACED;
    setting.start[i] = placement.start;
    setting.end[i] = placement.end;
    placement.crew.forEach((id, k) => {
      if (model.crew.from[i]! + k < model.crew.from[i + 1]!) setting.crew[model.crew.from[i]! + k] = resources.get(id) ?? -1;
    });
  }
  return setting;
}

/** Everything of a setting in a fresh placer, all but one activity. Holds whose end is left out last to the horizon. */
export function placeOthers(setting: Setting, without: number): Placer {
  const { model, status } = setting;
  const placer = replay(model, { ...setting, cause: new Uint8Array(0), causeAt: new Int32Array(0), terms: new Float64Array(0) }, without);
  const { holds } = model;
  for (let hold = 0; hold < holds.count; hold += 1) {
    const last = holds.to[hold]!;
    if (holds.from[hold] !== without && last !== without && status[last] !== PLACED) placer.holds.extend(hold, model.horizon);
  }
  return placer;
}

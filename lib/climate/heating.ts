/** What heats the workshop and when. */
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';

export interface HeatingRun {
  readonly start: Instant;
  readonly end: Instant;
  /** Thermostat, °C. */
  readonly setPoint: number;
}

/** A flueless burner gives its exhaust, and so its water, to the room. */
export type HeaterKind = 'electric' | 'flued burner' | 'flueless burner';

export type Fuel = 'propane' | 'natural gas' | 'paraffin';

export interface Heater {
  readonly kilowatts: number;
  readonly kind: HeaterKind;
  /** For burners. */
  readonly fuel: Fuel | null;
  /** True when nothing in it glows, sparks or burns in the room's air. */
  readonly isIgnitionSafe: boolean;
}

export interface HeatingPlan {
  readonly heater: Heater;
  /** Sorted and disjoint. */
  readonly runs: readonly HeatingRun[];
}

export const NO_HEATING: HeatingPlan = {
  heater: { kilowatts: 0, kind: 'electric', fuel: null, isIgnitionSafe: true },
  runs: [],
};

/**
 * kg of water per kWh of heat. Water per kg of fuel follows from complete burning (C3H8: 72/44, CH4: 36/16, C12H26: 234/170);
 * net heat values 12.88, 13.89 and 11.97 kWh/kg are from memory.
 */
export const WATER_PER_KWH: Readonly<Record<Fuel, number>> = {
  propane: 72 / 44 / 12.88,
  'natural gas': 36 / 16 / 13.89,
  paraffin: 234 / 170 / 11.97,
};

/** Water a heater gives to the room's air, kg per kWh. */
export function waterPerKwh(heater: Heater): number {
  return heater.kind === 'flueless burner' ? WATER_PER_KWH[heater.fuel ?? 'propane'] : 0;
}

/**
 * Sorts the runs and checks the plan. Fails with `heating-power`, `heating-run-empty`, `heating-set-point`, `heating-overlap` or
 * `heating-fuel`, path and all.
 */
export function checkHeating(plan: HeatingPlan): Result<HeatingPlan> {
  const issues: Issue[] = [];
  const { heater } = plan;
  if (!(heater.kilowatts >= 0 && heater.kilowatts <= 1000)) {
    issues.push(issue('heating-power', `The heater has ${heater.kilowatts} kW.`, 'Write its power in kW, such as 3.', { path: ['heater', 'kilowatts'] }));
  }
  if (heater.kind !== 'electric' && heater.fuel === null) {
    issues.push(issue('heating-fuel', 'The burner has no fuel.', 'Choose its fuel: it decides how much water it gives off.', { path: ['heater', 'fuel'] }));
  }
  const runs = plan.runs.map((run, index) => ({ run, index })).toSorted((a, b) => a.run.start - b.run.start);
  runs.forEach(({ run, index }, place) => {
    if (run.end <= run.start) {
      issues.push(issue('heating-run-empty', `Heating ${index + 1} ends before it starts.`, 'Choose an end after the start.', { path: ['runs', index, 'end'] }));
    }
    if (!(run.setPoint >= -10 && run.setPoint <= 60)) {
      const fix = 'Choose a set point from -10 to 60 °C.';
      issues.push(issue('heating-set-point', `Heating ${index + 1} has a set point of ${run.setPoint} °C.`, fix, { path: ['runs', index, 'setPoint'] }));
    }
    const before = runs[place - 1];
    if (before !== undefined && before.run.end > run.start) {
      const message = `Heating ${index + 1} starts before heating ${before.index + 1} ends.`;
      issues.push(issue('heating-overlap', message, 'Join the two, or end the first earlier.', { path: ['runs', index, 'start'] }));
    }
  });
  return issues.length > 0 ? fail(issues) : ok({ heater, runs: runs.map(({ run }) => run) });
}

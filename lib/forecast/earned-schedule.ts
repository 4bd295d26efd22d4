/** Planned against earned value in time: how many periods of the plan are done, and when the rest will be at that pace. */
import { fail, issue, ok, type Result } from '@/lib/result';

export interface EarnedSchedule {
  /** Periods of the plan that the earned value stands for. */
  readonly earned: number;
  /** Earned over actual time: 1 is as planned, below 1 slower. */
  readonly index: number;
  /** Planned length over the index, in periods; null: nothing is earned yet, so there is no pace. */
  readonly atCompletion: number | null;
}

/**
 * Earned schedule (Lipke 2003, from memory): ES = C + (EV - PV_C) / (PV_{C+1} - PV_C), C the last period with PV_C <= EV.
 * @param planned cumulative planned value at the end of each period, never falling
 * @param earned value earned by now, in the same unit
 * @param time periods gone by, above 0
 * Fails with `no-planned-value`, `planned-value-falls`, `no-time-gone` or `earned-out-of-range`.
 * @example earnedSchedule([10, 30, 60, 100], 45, 3) // 2.5 periods, index 0.833, 4.8 periods at completion
 */
export function earnedSchedule(planned: readonly number[], earned: number, time: number): Result<EarnedSchedule> {
  const total = planned.at(-1) ?? 0;
  if (total <= 0) return fail([issue('no-planned-value', 'The plan has no planned work, so progress cannot be measured against it.', 'Accept a plan with work in it.')]);
  if (planned.some((value, k) => value < (planned[k - 1] ?? 0))) return fail([issue('planned-value-falls', 'The planned work falls from one period to the next.', 'Give cumulative values.')]);
  if (!(time > 0)) return fail([issue('no-time-gone', 'No time of the plan has gone by yet.', 'Look again after the first session.')]);
  if (!(earned >= 0 && earned <= total)) return fail([issue('earned-out-of-range', `The work done, ${earned}, is not between 0 and the planned ${total}.`, 'Measure both in the same unit.')]);
  let period = 0;
  while (period < planned.length && planned[period]! <= earned) period += 1;
  const before = period === 0 ? 0 : planned[period - 1]!;
  const next = planned[period];
  const units = next === undefined ? periodsToFull(planned) : period + (earned - before) / (next - before);
  const index = units / time;
  return ok({ earned: units, index, atCompletion: index > 0 ? periodsToFull(planned) / index : null });
}

/** The first period at whose end everything is planned to be done. */
function periodsToFull(planned: readonly number[]): number {
  const total = planned.at(-1)!;
  return planned.findIndex((value) => value >= total) + 1;
}

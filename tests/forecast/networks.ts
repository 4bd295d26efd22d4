/** Networks without calendars, people or parts, for checks against known distributions. */
import type { ForecastInput, LengthChance } from '@/lib/simulation';
import { tabulate } from '@/lib/forecast/quantiles';
import type { Activity, Lag } from '@/lib/scheduling';

export interface Arrow {
  readonly id: string;
  readonly after: readonly string[];
  readonly quantile: (share: number) => number;
}

/** A forecast of a network whose lengths are drawn apart from each other, minutes. */
export function networkInput(arrows: readonly Arrow[], horizon: number, seed = 1): ForecastInput {
  const activities = arrows.map(({ id, quantile }): Activity => ({ id, duration: Math.max(1, Math.round(quantile(0.5))), mode: 'one-go', demands: [] }));
  const lags = arrows.flatMap(({ after, id }) => after.map((before): Lag => ({
    id: `${before}>${id}`, from: { activity: before, at: 'end' }, to: { activity: id, at: 'start' }, min: { kind: 'elapsed', minutes: 0 },
  })));
  const lengths = arrows.map(({ id, quantile }): LengthChance => ({
    activity: id, quantiles: tabulate(quantile), group: null, takes: 0, retakeChance: 0, retakeMinutes: 0, lostChance: 0, lostMinutes: 0,
  }));
  return {
    problem: { horizon, calendars: [], resources: [], activities, lags }, policy: [], lengths,
    groups: [], delays: [], spoils: [], cold: null, absences: [], watched: [], seed,
  };
}

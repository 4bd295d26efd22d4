import { describe, expect, it } from 'vitest';
import { minutes } from '@/lib/units';
import type { KeptForecast } from '@/lib/views/progress-forecast';
import { computeProgress } from '@/lib/views/progress-plan';
import { at, sampleSeries } from '../build/sample-series';
import { samplePlan } from './sample-plan';

const document = sampleSeries();
const onTime = samplePlan({
  unplaced: [], blocks: [],
  episodes: ['episode-1', 'episode-2'].map((episodeId) => ({ episodeId, shootDue: at('2026-12-30', '00:00'), recordedBy: at('2026-12-15', '19:40'), late: minutes(0) })),
});
const outlook = { percentiles: Array.from({ length: 99 }, () => at('2027-01-10', '12:00')), error: 1 };

/** A forecast with these chances for the episodes of the sample. */
function odds(...chances: readonly number[]): KeptForecast {
  return {
    kind: 'forecast', number: 1, name: 'odds', planNumber: 3, madeAt: at('2026-11-30', '09:00'),
    result: {
      runs: 100, seed: 1, time: 5, finish: outlook, lastPlanned: at('2026-12-19', '12:00'), beyondPlanned: 1, threats: [], bank: [], lostShots: 0, spoiltCoats: 0, missedWindows: 0, retakes: 0, assumptions: [],
      episodes: chances.map((chance, k) => ({ episodeId: `episode-${k + 1}`, shootDue: at('2026-12-30', '00:00'), recorded: outlook, chance, chanceError: 0.01 })),
    },
  };
}

const firstAnswer = (forecasts: readonly KeptForecast[]) => computeProgress({ document, accepted: onTime, baseline: null, ghosts: [], forecasts, now: at('2026-12-01', '12:00') }).answers[0]!;

describe('the answer whether the series is on track', () => {
  it('goes by the plan while no odds are known, and while they are even or better', () => {
    expect(firstAnswer([])).toMatchObject({ answer: 'Yes, by the plan', tone: 'good' });
    expect(firstAnswer([odds(0.5, 0.9)])).toMatchObject({ answer: 'Yes, by the plan', tone: 'good' });
  });

  it('says how many episodes are more likely late than not, and is no longer good', () => {
    expect(firstAnswer([odds(0.49, 0.9)])).toMatchObject({ answer: 'By the plan yes, by the odds 1 of 2 episodes is more likely late than not', tone: 'warn' });
    expect(firstAnswer([odds(0.2, 0.01)]).tone).toBe('stop');
  });
});

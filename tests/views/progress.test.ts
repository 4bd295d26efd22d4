import { describe, expect, it } from 'vitest';
import { instant, minutes } from '@/lib/units';
import type { KeptForecast } from '@/lib/views/progress-forecast';
import { computeProgress, type ProgressInput } from '@/lib/views/progress-plan';
import { at, sampleSeries } from '../build/sample-series';
import { SAMPLE_BLOCKS, samplePlan } from './sample-plan';

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

const NOW = at('2026-12-08', '12:00');
const HOUR = 3_600_000;
/** Quantiles an hour apart from a moment on. */
const spread = (first: ReturnType<typeof at>) => ({ percentiles: Array.from({ length: 99 }, (_, k) => instant(first + k * HOUR)), error: 90 });

/** A forecast made before the first session, with threats, trades and a bank. */
function fullForecast(): KeptForecast {
  const plain = odds(0.4, 0.97);
  return {
    ...plain, madeAt: at('2026-11-30', '09:00'),
    result: {
      ...plain.result, runs: 10_000, seed: 1, time: 1900, finish: spread(at('2027-01-01', '00:00')), beyondPlanned: 0.25,
      episodes: plain.result.episodes.map((one, k) => ({ ...one, recorded: spread(at(k === 0 ? '2026-12-04' : '2026-12-20', '12:00')) })),
      threats: [{ subject: { kind: 'outsideJob', id: 'job-wheel' }, share: 0.6, worth: 720 }, { subject: { kind: 'task', id: 'task-fit' }, share: 0.9, worth: 12 }],
      trades: [{ tradeId: 'trade-coater', jobs: 1, share: 0.6, worth: 720 }],
      bank: [{ week: '2026-W50', p10: 0, p50: 1, p90: 2 }], assumptions: ['Too little work is finished to learn from, so estimates are taken as typed, with that spread.'],
    },
  };
}

const input = (more: Partial<ProgressInput> = {}): ProgressInput =>
  ({ document, accepted: onTime, baseline: samplePlan(), ghosts: [], forecasts: [fullForecast()], now: NOW, ...more });
const wanted = (sure: string | null) => computeProgress(input({ sure })).wanted;
const ticked = (...ids: readonly string[]) => ({ ...document, tasks: document.tasks.map((task) => (ids.includes(task.id) ? { ...task, doneAt: at('2026-12-05', '16:00') } : task)) });

describe('the forecast as it is shown', () => {
  const shown = computeProgress(input()).forecast!;

  it('has the 10, 50 and 80 % dates of the finish and of every episode, and the odds of each release with their error', () => {
    expect(shown.finish).toEqual({ p10: 'Fri 1 Jan 2027', p50: 'Sun 3 Jan 2027', p80: 'Mon 4 Jan 2027' });
    expect(shown.episodes.map(({ chance, chanceError, p10, p50, p80, tone }) => ({ chance, chanceError, p10, p50, p80, tone }))).toEqual([
      { chance: '40 %', chanceError: '± 1.0', p10: 'Fri 4 Dec', p50: 'Sun 6 Dec', p80: 'Mon 7 Dec', tone: 'stop' },
      { chance: '97 %', chanceError: '± 1.0', p10: 'Sun 20 Dec', p50: 'Tue 22 Dec', p80: 'Wed 23 Dec', tone: 'good' },
    ]);
  });

  it('says how exact so many runs are, how many end after the planned sessions, and what is assumed without a history', () => {
    expect(shown.exactness).toBe('With so many runs the 80 % date is exact to ± 2 h; the odds of an episode have their own ± beside them, in points.');
    expect(shown.beyond).toMatch(/^25 % of the runs end after the last planned session/);
    expect(shown.runs).toBe('10,000 runs in 1.9 s, seed 1');
    expect(shown.assumptions[0]).toMatch(/^Too little work is finished to learn from/);
    const few = fullForecast();
    expect(computeProgress(input({ forecasts: [{ ...few, result: { ...few.result, finish: { ...few.result.finish, error: null } } }] })).forecast?.exactness).toBe('Too few runs to say how exact the dates are.');
  });

  it('names what holds the end up, work and trades, with what a saving there is worth', () => {
    expect(shown.threats.map(({ share, subject, worth }) => [subject.name, share, worth])).toEqual([
      ['Powder coat the wheel', '60 %', 'A working day sooner brings the finish 12 h sooner on average.'],
      ['Fit the wheel', '90 %', 'An hour less changes the finish by less than half an hour on average.'],
    ]);
    expect(shown.trades).toMatchObject([{ trade: { name: 'Canal Street Coaters' }, jobs: '1 open job', share: '60 %', worth: 'A working day sooner brings the finish 12 h sooner on average.' }]);
    expect(computeProgress(input({ forecasts: [odds(1)] })).forecast?.trades).toBeNull();
    expect(computeProgress(input()).answers[2]).toMatchObject({ answer: 'Powder coat the wheel', detail: 'It held the finish up in 60 % of the runs. A working day sooner brings the finish 12 h sooner on average.' });
  });

  it('tells the date for a confidence that somebody wants, and why there is none', () => {
    expect(wanted('85')).toMatchObject({ answer: '85 % sure: done by Mon 4 Jan 2027.', issue: null });
    expect(wanted('99 %')?.answer).toBe('99 % sure: done by Tue 5 Jan 2027.');
    for (const typed of ['0', '100', '-5', '150', 'soon']) {
      expect(wanted(typed)).toMatchObject({ typed, answer: null, issue: { code: 'confidence-out-of-range', fix: 'Type 85 for a date that holds in 85 of 100 cases.' } });
    }
    expect([wanted(null), wanted(' ')]).toEqual([null, null]);
    expect(shown.promises.map(({ confidence }) => confidence)).toEqual(['50 %', '70 %', '80 %', '90 %', '95 %']);
    expect(shown.bank).toEqual([{ week: '2026-W50', p10: 0, p50: 1, p90: 2 }]);
  });
});

describe('past forecasts', () => {
  it('have nothing to be judged by before an episode is recorded', () => {
    expect(computeProgress(input()).calibration).toEqual({ verdict: null, facts: [], rows: [] });
  });

  it('are judged by the day an episode was recorded, with coverage, score and a place on a common axis', () => {
    const { calibration } = computeProgress(input({ document: ticked('task-strip', 'task-clean', 'task-prime') }));
    expect(calibration.verdict).toBe('1 of 1 fell inside the 80 % interval; fewer than 10 say little yet.');
    expect(calibration.facts).toEqual([
      { name: 'Forecasts that came true', value: '1' }, { name: 'Inside the 80 % interval', value: '100 %' }, { name: 'By the 80 % date', value: '100 %' },
      { name: 'Mean pinball loss', value: expect.stringMatching(/^0\.\d\d days$/) },
    ]);
    expect(calibration.rows).toMatchObject([{ episode: 'Down to bare metal', interval: 'Fri 4 Dec to Tue 8 Dec', actual: 'Sat 5 Dec 16:00', isInside: true, places: { from: 0, to: 1 } }]);
    const [row] = calibration.rows;
    expect(row!.places.actual).toBeGreaterThan(0);
    expect(row!.places.actual).toBeLessThan(1);
  });
});

describe('progress against the first plan', () => {
  it('tells planned and earned work, the pace, and what the whole takes as typed and by experience', () => {
    const { earned } = computeProgress(input({ document: ticked('task-strip', 'task-clean', 'task-prime') }));
    expect(earned.words).toMatch(/^\d\.\d of 3 planned weeks of work are done after 1\.2\. At this pace the plan takes \d+\.\d weeks\.$/);
    expect(earned.facts.map(({ name }) => name)).toEqual(['Planned by now', 'Done', 'Whole plan', 'At completion, as typed', 'At completion, by experience', 'Pace']);
    expect(earned.facts[4]?.value).toBe('too little finished to learn from');
    expect(earned.facts[5]?.value).toMatch(/^\d\.\d\d planned weeks a week$/);
  });

  it('does not call nothing done a pace', () => {
    const { answers, earned } = computeProgress(input());
    expect(earned.words).toBe('Nothing of the first plan is done after 1.2 of 3 weeks.');
    expect(answers[0]?.answer).toBe('By the plan yes, by the odds 1 of 2 episodes is more likely late than not');
    expect(computeProgress(input({ baseline: null })).earned.words).toMatch(/there is none yet/);
  });

  it('draws build and series on one axis, with the odds, the releases and the last accepted plans as ghosts', () => {
    const { timelines, ghosts } = computeProgress(input({ ghosts: [{ number: 2, finish: at('2026-12-12', '12:00'), madeAt: at('2026-11-28', '12:00') }] }));
    expect(timelines?.build.map(({ kind, word }) => [kind, word])).toEqual([['ghost', 'Plan 2 ended'], ['plan', 'Plan 3 ends'], ['likely', 'Done with 50 %'], ['sure', 'Done with 80 %']]);
    expect(timelines?.series.filter(({ kind }) => kind === 'release')).toHaveLength(2);
    for (const mark of [...timelines!.build, ...timelines!.series]) expect(mark.at >= 0 && mark.at <= 1).toBe(true);
    expect(timelines!.span!.from).toBeLessThan(timelines!.span!.to);
    expect(ghosts).toEqual([{ number: 2, finish: 'Sat 12 Dec 12:00', made: 'Sat 28 Nov 12:00' }]);
  });

  it('counts parts that are done, away and drying', () => {
    const away = { ...document, outsideJobs: document.outsideJobs.map((job) => ({ ...job, droppedOffAt: at('2026-12-01', '12:00') })) };
    const whole = { ...onTime, result: { ...onTime.result, blocks: SAMPLE_BLOCKS } };
    expect(computeProgress(input({ document: away, accepted: whole, now: at('2026-12-06', '12:00') })).parts).toEqual({ done: [], away: ['Wheel'], drying: ['Frame'], open: 2, total: 2 });
    const finished = { ...document, tasks: [], outsideJobs: [], links: [] };
    expect(computeProgress(input({ document: finished })).parts).toMatchObject({ done: ['Frame', 'Wheel'], open: 0 });
  });

  it('lists for the weekly review what was done, what was planned and is not, and what comes next', () => {
    const whole = { ...onTime, result: { ...onTime.result, blocks: SAMPLE_BLOCKS } };
    const { review } = computeProgress(input({ document: ticked('task-strip'), accepted: whole }));
    expect(review.done).toEqual(['Strip the frame, Sat 5 Dec 16:00']);
    expect(review.late.some((line) => line.startsWith('Clean the frame, planned for '))).toBe(true);
    expect(review.next.some((line) => line.startsWith('Fit the wheel, '))).toBe(true);
  });
});

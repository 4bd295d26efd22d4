import { expect, test } from 'vitest';
import type { SeriesDocument, TimeLog } from '@/lib/build';
import { COMMON_PRACTICE } from '@/lib/estimate';
import { compareExperience, experienceOf, filmingOf, gatherExperience, learnedTaskFactors, timesOf } from '@/lib/episodes';
import { taskMinutes } from '@/lib/plan';
import { minutes } from '@/lib/units';
import { at, sampleSeries, sampleTask } from '../build/sample-series';

const EFFORT = { low: minutes(60), likely: minutes(60), high: minutes(60) };

/** A log from 09:00 of a day in November 2026. */
function log(id: string, taskId: string, length: number, more: Partial<TimeLog> = {}): TimeLog {
  const start = at('2026-11-23', '09:00');
  const end = at('2026-11-23', `${String(9 + Math.floor(length / 60)).padStart(2, '0')}:${String(length % 60).padStart(2, '0')}`);
  return { kind: 'timeLog', id, revision: 1, order: 0, name: id, taskId, activity: 'hands-on', start, end, wasInterrupted: false, ...more };
}

/** So many finished tasks of an hour that took 90 min each, and one that is open. */
function seriesWith(done: number, more: Partial<SeriesDocument['series']> = {}): SeriesDocument {
  const finished = Array.from({ length: done }, (_, k) => sampleTask(`done-${k}`, k, `Done ${k}`, { category: 'strip', effort: EFFORT, doneAt: at('2026-11-23', '12:00') }));
  const open = sampleTask('open', done, 'Open', { category: 'strip', effort: EFFORT });
  const sample = sampleSeries();
  return { ...sample, series: { ...sample.series, ...more }, tasks: [...finished, open], timeLogs: finished.map((task, k) => log(`log-${k}`, task.id, 90)) };
}

test('five finished tasks that took half as long again make the plan book the same of the next, once the switch is on', () => {
  const [off, on] = [seriesWith(5), seriesWith(5, { usesExperience: true })];
  const open = on.tasks.at(-1)!;
  expect(taskMinutes(off, open)).toBe(60);
  expect(taskMinutes(on, open)).toBe(90);
  expect(compareExperience(off)).toMatchObject({ typed: 60, tasks: 1, observations: 5 });
  expect(compareExperience(off).experienced).toBeCloseTo(90, 10);
});

test('four finished tasks are shown, and the plan does not go by them', () => {
  const document = seriesWith(4, { usesExperience: true });
  expect(gatherExperience(document).handsOn).toHaveLength(4);
  expect(experienceOf(document).handsOn('strip').factor).toBe(1);
  expect(learnedTaskFactors(document).size).toBe(0);
  expect(timesOf(document)(document.tasks.at(-1)!).mean).toBe(60);
});

test('the P80 of the next task counts how far finished work was scattered and how sure its factor is, with the count behind it', () => {
  const document = seriesWith(6, { usesExperience: true });
  const open = document.tasks.at(-1)!;
  const { n, mean, deviation, residual, category } = learnedTaskFactors(document).get('open')!;
  expect([category, n]).toEqual(['strip', 6]);
  expect(mean).toBeCloseTo(Math.log(1.5), 10);
  // Six alike: s² = 4·0.3²/(4 + 5) = 0.04, and the mean of the only category is known to s²/6 plus the least spread between categories.
  expect(residual).toBeCloseTo(0.2, 10);
  expect(deviation).toBeGreaterThan(Math.sqrt(0.04 / 6) - 1e-9);
  const time = timesOf(document)(open);
  expect(time.own).toBeCloseTo(90 * Math.sqrt(Math.exp(0.04) - 1), 6);
  expect(time.deviation).toBeGreaterThan(time.own);
  const more = seriesWith(30, { usesExperience: true });
  expect(learnedTaskFactors(more).get('open')!.deviation).toBeLessThan(deviation);
  expect(learnedTaskFactors(seriesWith(6)).size).toBe(0);
});

test('several logs of a task add up, hands-on and filming apart', () => {
  const base = seriesWith(1);
  const tasks = base.tasks.map((task) => ({ ...task, coverage: 'locked-off' as const }));
  const timeLogs = [log('a', 'done-0', 30), log('b', 'done-0', 45), log('c', 'done-0', 20, { activity: 'filming' })];
  const found = gatherExperience({ ...base, tasks, timeLogs });
  expect(found.handsOn).toMatchObject([{ taskId: 'done-0', estimate: 60, actual: 75 }]);
  expect(found.filming).toMatchObject([{ category: 'locked-off', actual: 20 }]);
});

test('a log that still runs says nothing yet, an interrupted one is kept and not learned from', () => {
  const base = seriesWith(1);
  expect(gatherExperience({ ...base, timeLogs: [log('a', 'done-0', 30, { end: null })] }).handsOn).toEqual([]);
  const cut = gatherExperience({ ...base, timeLogs: [log('a', 'done-0', 30, { wasInterrupted: true })] });
  expect(cut.handsOn).toMatchObject([{ wasInterrupted: true }]);
  expect(cut.learnedHandsOn.leftOut).toBe(1);
});

test('counts of its own go before common practice, and every other way of filming stays as it was', () => {
  const { series, ...rest } = sampleSeries();
  const own = [{ coverage: 'montage' as const, positions: 2, positionsPerHour: 0, shots: 9, shotsPerHour: 0 }];
  const { habits } = filmingOf({ ...rest, series: { ...series, filming: { ...series.filming, own } } });
  expect(habits.montage).toEqual({ positions: 2, positionsPerHour: 0, shots: 9, shotsPerHour: 0, packUps: 1 });
  expect(habits['locked-off']).toEqual(COMMON_PRACTICE.habits['locked-off']);
});

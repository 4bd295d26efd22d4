import { expect, test } from 'vitest';
import type { SeriesDocument, TimeLog } from '@/lib/build';
import { COMMON_PRACTICE } from '@/lib/estimate';
import { compareExperience, experienceOf, filmingOf, gatherExperience, timesOf } from '@/lib/episodes';
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
  expect(experienceOf(document).handsOnFactor('strip')).toBe(1);
  expect(timesOf(document)(document.tasks.at(-1)!).mean).toBe(60);
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

import { expect, test } from 'vitest';
import { budgetEpisodes, findRelief, type BudgetProblem, type BudgetSession, type BudgetTask, type Relief } from '@/lib/episodes';
import { addMinutes, instant } from '@/lib/units';

const NOW = instant(Date.parse('2026-12-01T00:00Z'));
const hour = (h: number) => addMinutes(NOW, 60 * h);
const session = (from: number, to: number, more: Partial<BudgetSession> = {}): BudgetSession => ({ start: hour(from), end: hour(to), people: 1, isRecording: true, ...more });
const task = (id: string, episodeId: string, mean: number, more: Partial<BudgetTask> = {}): BudgetTask => ({ id, name: id, episodeId, mean, deviation: 0, shared: [], crew: 1, isFilmed: false, ...more });

const BASE: BudgetProblem = {
  now: NOW, fillLimit: 1, sessions: [session(10, 14), session(30, 34)], tasks: [],
  episodes: [{ id: 'two', name: 'Two', due: hour(40) }, { id: 'one', name: 'One', due: hour(20) }],
};

test('episodes due earlier are served first', () => {
  const [one, two] = budgetEpisodes({ ...BASE, tasks: [task('a', 'one', 180), task('b', 'two', 300)] });
  expect(one).toMatchObject({ episodeId: 'one', verdict: 'fits', all: { available: 240, takenEarlier: 0, left: 60, sessions: 1 } });
  expect(two).toMatchObject({ episodeId: 'two', verdict: 'fits', all: { available: 480, takenEarlier: 180, left: 0, sessions: 2 } });
});

test('a minute more than there is makes an episode short, a spread makes it tight', () => {
  expect(budgetEpisodes({ ...BASE, tasks: [task('a', 'one', 241)] })[0]).toMatchObject({ verdict: 'short', all: { left: -1 } });
  const [tight] = budgetEpisodes({ ...BASE, tasks: [task('a', 'one', 230, { deviation: 30 })] });
  expect(tight!.verdict).toBe('tight');
  expect(tight!.all.leftAtP80).toBeCloseTo(10 - 0.8416 * 30, 2);
  expect(tight!.words).toBe("It needs 3 h 50 min of the crew's time, 4 h 15 min at P80; 4 h are free in sessions before recording is due: enough on average, 15 min too little for eight of ten cases.");
});

const of = (key: string): Partial<BudgetTask> => ({ shared: [{ key, deviation: 30 }] });
const left = (...tasks: readonly BudgetTask[]): number => budgetEpisodes({ ...BASE, tasks })[0]!.all.leftAtP80;

test('spreads of tasks alone are added as independent, those of one factor as one', () => {
  const base = 240 - 200;
  expect(left(task('a', 'one', 100, { deviation: 30 }), task('b', 'one', 100, { deviation: 30 }))).toBeCloseTo(base - 0.8416 * Math.hypot(30, 30), 2);
  expect(left(task('a', 'one', 100, of('paint')), task('b', 'one', 100, of('paint')))).toBeCloseTo(base - 0.8416 * 60, 2);
  expect(left(task('a', 'one', 100, of('paint')), task('b', 'one', 100, of('strip')))).toBeCloseTo(base - 0.8416 * Math.hypot(30, 30), 2);
});

test('filmed work is held against recording sessions alone', () => {
  const sessions = [session(10, 14, { isRecording: false }), session(15, 17)];
  const [one] = budgetEpisodes({ ...BASE, sessions, tasks: [task('a', 'one', 180, { isFilmed: true })] });
  expect(one).toMatchObject({ verdict: 'short', all: { left: 180 }, filmed: { left: -60 } });
  expect(one!.words).toContain('free in recording sessions');
});

test('work for two takes twice the time of the crew, and a session of two has it', () => {
  const [one] = budgetEpisodes({ ...BASE, sessions: [session(10, 14, { people: 2 })], tasks: [task('a', 'one', 240, { crew: 2 })] });
  expect(one).toMatchObject({ verdict: 'fits', all: { available: 480, left: 0 } });
});

test('sessions count from now, to the due date, up to the fill limit', () => {
  const [one] = budgetEpisodes({ ...BASE, now: hour(11), fillLimit: 0.5, sessions: [session(10, 14), session(18, 22)], tasks: [task('a', 'one', 10)] });
  expect(one!.all.available).toBe((3 + 2) * 60 * 0.5);
});

test('an episode without work is done', () => {
  expect(budgetEpisodes(BASE)[0]).toMatchObject({ verdict: 'done', words: 'No workshop time is needed any more.' });
});

const option = (taskId: string | null, frees: number): Relief => ({ kind: 'film simpler', taskId, words: `${taskId} ${frees}`, frees });

test('relief is the fewest changes, then the least that is enough', () => {
  const options = [option('a', 30), option('b', 60), option('c', 120), option('d', 61)];
  expect(findRelief(options, 60).map((set) => set.map(({ frees }) => frees))).toEqual([[60], [61], [120]]);
  expect(findRelief(options, 150)[0]!.map(({ frees }) => frees)).toEqual([120, 30]);
});

test('a task is changed in one way only', () => {
  const options = [option('a', 40), option('a', 50)];
  expect(findRelief(options, 80)).toEqual([[options[1]]]);
});

test('nothing missing needs nothing; what helps nothing is left out', () => {
  expect(findRelief([option('a', 40)], 0)).toEqual([]);
  expect(findRelief([option('a', 0)], 10)).toEqual([]);
});

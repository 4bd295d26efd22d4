/** Replays against dates worked out by hand. */
import { describe, expect, it } from 'vitest';
import { Replay, type Activity, type Lag, type Policy, type Problem } from '@/lib/scheduling';
import { compile } from '@/lib/scheduling/compile';
import { Constructor } from '@/lib/scheduling/construct';
import { listByKey } from '@/lib/scheduling/list-order';
import { arrange } from '@/lib/scheduling/order';
import { PLACED } from '@/lib/scheduling/placer';
import { propagate } from '@/lib/scheduling/propagate';
import { activity, finishToStart, lag, problem } from './simple';

const times = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => k);

/** Starts of a replay, '-' for what has no place. */
const startsOf = (replay: Replay): readonly (number | string)[] => [...replay.start].map((start, i) => (replay.isPlaced[i] === 1 ? start : '-'));
/** Starts of the serial scheme with its own choices, in the order of the problem. */
const builtStartsOf = (input: Problem): readonly (number | string)[] => {
  const model = compile(input);
  const propagation = propagate(model);
  if (!propagation.ok) throw new Error('A contradiction');
  const order = arrange(model);
  const builder = new Constructor(model, order, propagation.bounds);
  builder.build(listByKey(order, input.activities.map((_, i) => i)), new Uint8Array(model.count));
  return [...builder.placer.start].map((start, i) => (builder.placer.status[i] === PLACED ? start : '-'));
};
const replayOf = (input: Problem, policy: Policy = []): Replay => {
  const replay = new Replay(input, policy);
  replay.run();
  return replay;
};
const at = (id: string, start: number, crew: readonly string[] = []) => ({ activity: id, start, crew });

const toEnd = (from: 'start' | 'end', minutes: number): Lag => ({ ...finishToStart('a', 'b', minutes), from: { activity: 'a', at: from }, to: { activity: 'b', at: 'end' } });

describe('a replay', () => {
  const ann = { id: 'ann', capacity: 1 };
  const byAnn: Partial<Activity> = { crew: [{ pool: ['ann', 'ben'], count: 1 }] };
  const people = [ann, { id: 'ben', capacity: 1 }];

  it('follows the order of the policy and keeps its people', () => {
    const input = problem(['a', 'b', 'c'].map((id) => activity(id, 10, byAnn)), { resources: people });
    expect(startsOf(replayOf(input, [at('c', 0, ['ann']), at('a', 5, ['ann']), at('b', 3, ['ben'])]))).toEqual([10, 0, 0]);
    expect(startsOf(replayOf(input, [at('c', 0, ['ann']), at('a', 5, ['ann']), at('b', 3, ['ann'])]))).toEqual([20, 10, 0]);
    // Nobody was chosen: the first of the pool does it all.
    expect(startsOf(replayOf(input))).toEqual([0, 10, 20]);
  });

  it('keeps appointments as "not before", and what opens a window no earlier than planned', () => {
    const input = problem([activity('a', 10, { pin: { start: 30 } }), activity('b', 10, { release: 7 }), activity('c', 10)], { lags: [finishToStart('b', 'c', 5, 20)] });
    expect(startsOf(replayOf(input, [at('a', 30), at('b', 12), at('c', 40)]))).toEqual([30, 12, 27]);
    expect(startsOf(replayOf(input))).toEqual([30, 7, 22]);
  });

  it('counts a window that closed', () => {
    const input = problem([activity('a', 10), activity('b', 10, { release: 40 })], { lags: [finishToStart('a', 'b', 5, 30)] });
    const replay = replayOf(input);
    expect([startsOf(replay), replay.missedWindows]).toEqual([[0, 40], 0]);
    replay.release[1] = 41;
    replay.run();
    expect([startsOf(replay), replay.missedWindows]).toEqual([[0, 41], 1]);
    replay.reset();
    replay.run();
    expect(replay.missedWindows).toBe(0);
  });

  it('leaves out what is to be left out, with the end of another in its stead', () => {
    const input = problem([activity('a', 10), activity('b', 10), activity('c', 10)], { lags: [finishToStart('a', 'b'), finishToStart('b', 'c', 5, 30)] });
    const replay = replayOf(input);
    expect(startsOf(replay)).toEqual([0, 10, 25]);
    replay.isLeftOut[1] = 1;
    replay.run();
    // From the first minute on, as if it had never been there: too long ago for the window.
    replay.release[2] = 31;
    replay.run();
    expect([startsOf(replay), replay.start[1], replay.end[1], replay.isPlaced[1], replay.missedWindows]).toEqual([[0, '-', 31], 0, 0, 2, 1]);
    replay.standIn[1] = 0;
    replay.run();
    expect([startsOf(replay), replay.start[1], replay.end[1], replay.missedWindows]).toEqual([[0, '-', 31], 10, 10, 0]);
  });

  it('goes around what is blocked', () => {
    const input = problem([activity('a', 10, byAnn), activity('b', 10, byAnn)], { resources: people });
    const replay = new Replay(input, []);
    replay.block(0, 5, 12);
    replay.block(0, 30, 31);
    replay.run();
    expect(startsOf(replay)).toEqual([12, 31]);
    replay.reset();
    replay.run();
    expect(startsOf(replay)).toEqual([0, 10]);
  });

  it('leaves no place to what ends too late, nor to what waits for it', () => {
    const input = problem([activity('a', 10, { latestEnd: 10 }), activity('b', 10), activity('c', 10)], { lags: [finishToStart('a', 'b'), finishToStart('c', 'a', -5)] });
    const replay = replayOf(input);
    expect([startsOf(replay), replay.end[0], replay.start[1]]).toEqual([['-', '-', 0], 1000, 1000]);
    replay.setLag(1, -10);
    replay.run();
    expect(startsOf(replay)).toEqual([0, 10, 0]);
  });

  it('stretches lags and sets them anew, each until all is reset', () => {
    const shop = { id: 'shop', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }] };
    const ready = times(60).map((k) => 20 * k + 30);
    const input = problem([activity('a', 10), activity('b', 10), activity('c', 10), activity('d', 10)], {
      calendars: [shop], lags: [finishToStart('a', 'b', 40), lag('a', 'c', { kind: 'working', minutes: 60, calendar: 'shop' }), lag('a', 'd', { kind: 'table', step: 20, ready })],
    });
    const replay = replayOf(input);
    expect(startsOf(replay)).toEqual([0, 50, 70, 50]);
    times(3).forEach((k) => replay.stretchLag(k, 1600));
    replay.run();
    expect(startsOf(replay)).toEqual([0, 74, 206, 68]);
    replay.setLag(0, 3);
    replay.setLag(1, 91);
    replay.setLag(2, Int32Array.from(ready, (minute) => minute + 100));
    replay.run();
    expect(startsOf(replay)).toEqual([0, 13, 201, 150]);
    // A number is no length of a table.
    replay.setLag(2, 5);
    replay.run();
    expect(replay.start[3]).toBe(150);
    replay.reset();
    replay.run();
    expect(startsOf(replay)).toEqual([0, 50, 70, 50]);
  });

  it('lets an end wait as well as a start', () => {
    const shop = { id: 'shop', intervals: [{ start: 0, end: 30 }, { start: 100, end: 130 }] };
    const of = (from: 'start' | 'end', minutes: number, more: Partial<Activity>) => startsOf(replayOf(problem([activity('a', 10), activity('b', 20, more)], { calendars: [shop], lags: [toEnd(from, minutes)] })))[1];
    expect([of('end', 5, {}), of('end', 10, {}), of('end', 15, {}), of('start', 35, {})]).toEqual([0, 0, 5, 15]);
    expect([of('end', 20, { calendar: 'shop' }), of('end', 21, { calendar: 'shop' }), of('end', 95, { calendar: 'shop', mode: 'split' }), of('end', 20, { calendar: 'shop', mode: 'split' })]).toEqual([10, 100, 15, 10]);
  });

  it('tells what a start waited for', () => {
    const input = problem([activity('a', 10, byAnn), activity('b', 25), activity('c', 5, byAnn), activity('d', 5, { release: 100 }), activity('e', 5)], {
      resources: people, lags: [finishToStart('a', 'c'), finishToStart('b', 'd', 10), finishToStart('b', 'e', -5), finishToStart('c', 'e', 3)],
    });
    const replay = replayOf(input);
    expect([startsOf(replay), input.activities.map((_, i) => replay.binding(i))]).toEqual([[0, 0, 10, 100, 20], [-1, -1, 0, -1, 1]]);
    const busy = problem([activity('a', 10, byAnn), activity('b', 30, byAnn), activity('c', 5, byAnn)], { resources: people });
    const turns = replayOf(busy, [at('a', 0, ['ann']), at('b', 1, ['ben']), at('c', 2, ['ann'])]);
    expect([startsOf(turns), turns.binding(2), turns.binding(1)]).toEqual([[0, 0, 10], 0, -1]);
  });

  it('knows how long work could be on an empty board', () => {
    const shop = { id: 'shop', intervals: [{ start: 0, end: 30 }, { start: 100, end: 150 }] };
    const replay = replayOf(problem([activity('a', 10, { calendar: 'shop' }), activity('b', 10, { latestEnd: 60 }), activity('c', 10, { calendar: 'shop', mode: 'split' })], { calendars: [shop] }));
    expect([replay.longestDuration(0, 500), replay.longestDuration(1, 500), replay.longestDuration(1, 40), replay.longestDuration(2, 500), replay.duration[0]]).toEqual([50, 60, 40, 80, 10]);
  });
});

const wet = (tail: number): Partial<Activity> => ({ states: [{ medium: 'air', state: 'wet', tail }] });

const onJig = (throughPauses: boolean): Partial<Activity> => ({ demands: [{ resource: 'jig', amount: 1, throughPauses }] });

const on = (amount: number): Partial<Activity> => ({ demands: [{ resource: 'bench', amount }] });

describe('a replay, as the search itself, keeps', () => {
  const shop = { id: 'shop', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }, { start: 400, end: 500 }, { start: 600, end: 700 }] };
  const ann = { id: 'ann', capacity: 1, calendar: 'shop' };
  const inShop: Partial<Activity> = { calendar: 'shop', mode: 'split' };
  const byAnn: Partial<Activity> = { crew: [{ pool: ['ann'], count: 1 }] };
  const dusty: Partial<Activity> = { states: [{ medium: 'air', state: 'dusty', tail: 20 }] };
  const fill = (limit: number) => shop.intervals.map((within, k) => ({ id: `fill ${k}`, resource: 'ann', within, limit }));
  const starts = (activities: readonly Activity[], more: Partial<Problem> = {}) => {
    const input = problem(activities, { calendars: [shop], resources: [ann, { id: 'jig', capacity: 1 }, { id: 'bench', capacity: 3 }], ...more });
    const replayed = startsOf(replayOf(input));
    expect(builtStartsOf(input)).toEqual(replayed);
    return replayed;
  };

  it('the states of the air, with what they leave behind', () => {
    expect(starts([activity('paint', 10, wet(50)), activity('grind', 10, dusty), activity('coat', 10, wet(0)), activity('look', 0, dusty)])).toEqual([0, 60, 0, 60]);
    const until = { step: 25, ready: times(60).map((k) => 25 * k + 100) };
    expect(starts([activity('paint', 10, { states: [{ medium: 'air', state: 'wet', tail: 5, until }] }), activity('grind', 10, dusty)])).toEqual([0, 125]);
  });

  it('the budget of a session, for work that is split and work that is not', () => {
    expect(starts([activity('a', 60, { ...byAnn, calendar: 'shop' }), activity('b', 20, { ...byAnn, calendar: 'shop' }), activity('c', 5, { ...byAnn, calendar: 'shop' })], { budgets: fill(70) })).toEqual([0, 200, 60]);
    expect(starts([activity('a', 60, { ...byAnn, ...inShop }), activity('b', 60, { ...byAnn, ...inShop }), activity('c', 30, { ...byAnn, ...inShop, shortestPiece: 30 })], { budgets: fill(70) })).toEqual([0, 90, 400]);
  });

  it('a budget to its last minute, in the last session of all too, and a second one within the session', () => {
    const piece = { ...byAnn, ...inShop, shortestPiece: 30 };
    expect(starts([activity('a', 40, { ...byAnn, ...inShop }), activity('b', 30, piece), activity('c', 70, { ...piece, release: 590 })], { budgets: fill(70) })).toEqual([0, 40, 600]);
    expect(starts([activity('a', 110, { ...piece, release: 10 })], { budgets: fill(70) })).toEqual([30]);
    const within = { id: 'noon', resource: 'ann', within: { start: 20, end: 80 }, limit: 10 };
    expect(starts([activity('a', 30, { ...byAnn, calendar: 'shop' }), activity('b', 40, { ...byAnn, calendar: 'shop' })], { budgets: [...fill(70), within] })).toEqual([0, 200]);
  });

  it('a budget over several sessions, and one that work is held through', () => {
    expect(starts([activity('a', 80, { ...byAnn, calendar: 'shop' }), activity('b', 50, { ...byAnn, calendar: 'shop' })], { budgets: [{ id: 'week', resource: 'ann', within: { start: 0, end: 500 }, limit: 100 }] })).toEqual([0, 600]);
    expect(starts([activity('a', 120, { ...inShop, ...onJig(true) }), activity('b', 30, { ...inShop, ...onJig(true) })], { budgets: [{ id: 'week', resource: 'jig', within: { start: 0, end: 300 }, limit: 230 }] })).toEqual([0, 290]);
  });

  it('doses of the people who take them', () => {
    const noisy = (perMinute: number): Partial<Activity> => ({ ...byAnn, calendar: 'shop', doses: [{ kind: 'noise', perMinute }] });
    const budgets = [{ id: 'day', resource: 'ann', dose: 'noise', within: { start: 0, end: 100 }, limit: 50 }];
    expect(starts([activity('a', 20, noisy(2)), activity('b', 20, noisy(1)), activity('c', 20, { ...byAnn, calendar: 'shop' }), activity('d', 10, noisy(1))], { budgets })).toEqual([0, 200, 20, 40]);
  });

  it('a part through the pauses of its work, and a machine only while it is used', () => {
    expect(starts([activity('a', 120, { ...inShop, ...onJig(true) }), activity('b', 10, onJig(false))])).toEqual([0, 220]);
    expect(starts([activity('a', 120, { ...inShop, ...onJig(false) }), activity('b', 10, onJig(false))])).toEqual([0, 100]);
  });

  it('places for several, each as long as it is taken', () => {
    expect(starts([activity('a', 30, on(1)), activity('b', 50, on(1)), activity('c', 10, on(2)), activity('d', 5, on(1)), activity('e', 5, on(3))])).toEqual([0, 0, 30, 0, 50]);
  });

  it('a part away from one activity to another', () => {
    const away = { holds: [{ id: 'away', resource: 'jig', amount: 1, from: 'drop', to: 'fetch' }] };
    const [drop, use] = [activity('drop', 10), activity('use', 10, onJig(false))];
    expect(starts([drop, activity('fetch', 10, { release: 70 }), use], { ...away, lags: [finishToStart('drop', 'fetch', 40)] })).toEqual([0, 70, 80]);
    expect(starts([use, drop, activity('fetch', 10)], { ...away, lags: [finishToStart('drop', 'fetch', 40)] })).toEqual([0, 10, 60]);
    // Nobody brings it back: a replay says so, where a search would name the contradiction.
    const lost = problem([drop, activity('fetch', 10, { latestEnd: 20 }), use], { ...away, resources: [{ id: 'jig', capacity: 1 }], lags: [finishToStart('drop', 'fetch', 40)] });
    expect(startsOf(replayOf(lost))).toEqual([0, '-', '-']);
  });

  it('the shortest piece and the longest span of split work', () => {
    expect(starts([activity('a', 120, { ...inShop, shortestPiece: 40 }), activity('b', 90, { ...inShop, shortestPiece: 40, release: 70 })])).toEqual([20, 200]);
    const span: Lag = { id: 'span', from: { activity: 'a', at: 'start' }, to: { activity: 'a', at: 'end' }, max: 210 };
    const over = activity('a', 110, { ...inShop, ...byAnn, release: 5 });
    expect([starts([over], { lags: [span] }), starts([over], { lags: [{ ...span, max: 209 }] })]).toEqual([[5], ['-']]);
    expect(starts([activity('a', 100, { ...inShop, release: 95 })], { lags: [{ ...span, max: 150 }] })).toEqual([200]);
  });
});

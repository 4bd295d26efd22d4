/** The parts of a replay: boards against plain lists of what is there, openings and resources without a look by hand. */
import { describe, expect, it } from 'vitest';
import type { Activity, Interval, Lag, Problem } from '@/lib/scheduling';
import { FAR } from '@/lib/scheduling/calendar-index';
import { compile } from '@/lib/scheduling/compile';
import { listByKey } from '@/lib/scheduling/list-order';
import { arrange } from '@/lib/scheduling/order';
import { DayBoard, MediumBoard } from '@/lib/scheduling/replay-board';
import { findOrderly } from '@/lib/scheduling/replay-chains';
import { listOpenings, listRows, Openings } from '@/lib/scheduling/replay-rows';
import { tableMaker } from '@/lib/scheduling/replay-tables';
import { Dice } from '../bench/series';
import { activity, finishToStart, lag, problem } from './simple';

const DAY = 1440;
const times = (count: number): readonly number[] => Array.from({ length: count }, (_, k) => k);

interface Taken {
  readonly row: number;
  readonly from: number;
  readonly to: number;
  readonly amount: number;
}

describe('the board of a day', () => {
  it.each(times(6))('answers as a list of all that is there does: seed %i', (seed) => {
    const dice = new Dice(300 + seed);
    const board = new DayBoard(3, 3 * DAY);
    for (let round = 0; round < 2; round += 1) {
      const all: Taken[] = [];
      board.clear();
      for (let step = 0; step < 40; step += 1) {
        const from = dice.whole(0, 3 * DAY - 1);
        const taken: Taken = { row: dice.whole(0, 2), from, to: Math.min(3 * DAY, from + dice.whole(0, dice.is(0.3) ? 2000 : 200)), amount: dice.whole(1, 2) };
        if (taken.from < taken.to) all.push(taken);
        board.add(taken.row, taken.from, taken.to, taken.amount);
        for (let question = 0; question < 5; question += 1) {
          const row = dice.whole(0, 2);
          const first = dice.whole(0, 3 * DAY - 1);
          const last = Math.min(3 * DAY, first + dice.whole(0, 600));
          const room = dice.whole(-1, 3);
          const own = all.filter((one) => one.row === row && one.to > first && one.from < last);
          const load = (minute: number) => own.reduce((sum, one) => sum + (one.from <= minute && minute < one.to ? one.amount : 0), 0);
          const tight = own.map((one) => Math.max(one.from, first)).filter((minute) => load(minute) > room);
          const next = board.meet(row, first, last, room);
          const asked = [row, first, last, room];
          if (first < last && room < 0) expect([...asked, next]).toEqual([...asked, FAR]);
          else if (first >= last || tight.length === 0) expect([...asked, next]).toEqual([...asked, 0]);
          else if (room === 0) expect([...asked, next]).toEqual([...asked, Math.max(...own.map(({ to }) => to))]);
          // Where several may share, the start goes on to the first end within one of the tight spots.
          else expect(tight.map((minute) => Math.min(...own.filter((one) => one.from <= minute && minute < one.to).map(({ to }) => to)))).toContain(next);
          expect(board.lastEnd(row)).toBe(Math.max(0, ...all.filter((one) => one.row === row).map(({ to }) => to)));
        }
      }
    }
  });

  it('keeps all that is there when its lists grow, and nothing once it is cleared', () => {
    const board = new DayBoard(2, 2000 * DAY);
    for (let day = 0; day < 2000; day += 1) for (let k = 0; k < 3; k += 1) board.add(day % 2, day * DAY + 100 * k, day * DAY + 100 * k + 50, 1);
    const met = () => times(2000).filter((day) => board.meet(day % 2, day * DAY + 220, day * DAY + 240, 0) === day * DAY + 250 && board.meet(1 - (day % 2), day * DAY, day * DAY + DAY, 0) === 0).length;
    expect(met()).toBe(2000);
    board.clear();
    expect([met(), board.lastEnd(0), board.lastEnd(1)]).toEqual([0, 0, 0]);
  });

  it('takes what goes on past its last day as part of that day', () => {
    const board = new DayBoard(1, DAY);
    board.add(0, DAY + 10, DAY + 20, 1);
    expect([board.meet(0, 0, DAY + 10, 0), board.meet(0, 0, DAY + 11, 0), board.meet(0, DAY + 19, DAY + 30, 0), board.meet(0, DAY + 20, DAY + 30, 0)]).toEqual([0, DAY + 20, DAY + 20, 0]);
  });
});

describe('the states of a medium', () => {
  it.each(times(6))('are met as a list of all of them is: seed %i', (seed) => {
    const dice = new Dice(400 + seed);
    const board = new MediumBoard(2);
    for (let round = 0; round < 2; round += 1) {
      const all: Taken[] = [];
      board.clear();
      for (let step = 0; step < 20; step += 1) {
        const from = dice.whole(0, 90);
        const one: Taken = { row: dice.whole(0, 1), from, to: from + dice.whole(1, 40), amount: dice.whole(0, 2) };
        all.push(one);
        board.add(one.row, one.from, one.to, one.amount);
        for (let question = 0; question < 6; question += 1) {
          const [row, first, state] = [dice.whole(0, 1), dice.whole(0, 130), dice.whole(0, 2)];
          const last = first + dice.whole(0, 40);
          const others = all.filter((other) => other.row === row && other.amount !== state);
          const expected = first < last ? Math.max(0, ...others.filter(({ from: start, to }) => start < last && to > first).map(({ to }) => to)) : 0;
          expect([row, first, last, state, board.meet(row, first, last, state)]).toEqual([row, first, last, state, expected]);
          expect(board.isFreeFrom(row, first, state)).toBe(others.every(({ to }) => to <= first));
        }
      }
    }
  });
});

describe('the tables of waits', () => {
  it('say what the whole table says, inside the openings and outside, and nothing past its end', () => {
    const openings = new Openings([{ start: 100, end: 260 }, { start: 900, end: 1000 }], 2000);
    const make = tableMaker(2000, [openings]);
    const ready = Int32Array.from(times(120), (k) => k * 10 + (k % 7) * 13 + (k === 15 ? 70_000 : 0));
    const table = make(10, ready);
    expect(make(10, ready)).toBe(table);
    for (const t of [...times(1300), 5000]) {
      const k = Math.ceil(t / 10);
      expect([t, table.read(t, 1000), table.read(t, 1500)]).toEqual(k < 120 ? [t, ready[k]!, k * 10 + Math.round((ready[k]! - k * 10) * 1.5)] : [t, -1, -1]);
    }
    const other = make(25, ready.map((value, k) => value + 15 * k));
    expect([other.read(110, 1000), other.read(2000, 1000)]).toEqual([ready[5]! + 75, ready[80]! + 1200]);
  });
});

const openingsOf = (input: Problem): readonly (readonly (readonly [number, number])[])[] => {
  const model = compile(input);
  return listOpenings(model, listRows(model)).map(({ count, end, start }) => times(count).map((k) => [start[k]!, end[k]!] as const));
};

const needs = (...ids: readonly string[]) => ({ demands: ids.map((resource) => ({ resource, amount: 1 })) });

describe('openings', () => {
  const calendars = [
    { id: 'shop', intervals: [{ start: 0, end: 50 }, { start: 50, end: 100 }, { start: 200, end: 300 }] },
    { id: 'ann', intervals: [{ start: 20, end: 60 }, { start: 60, end: 90 }, { start: 250, end: 400 }] },
    { id: 'ben', intervals: [{ start: 80, end: 260 }] },
  ];
  const resources = [{ id: 'ann', capacity: 1, calendar: 'ann' }, { id: 'ben', capacity: 1, calendar: 'ben' }, { id: 'jig', capacity: 1 }];

  it('are where the work and all its resources have time; people go on over a seam, work does not', () => {
    expect(openingsOf(problem([
      activity('free', 5), activity('shop', 5, { calendar: 'shop' }), activity('of ann', 5, needs('ann', 'jig')), activity('both', 5, { ...needs('ann'), calendar: 'shop' }),
      activity('all', 5, { calendar: 'shop', crew: [{ pool: ['ann'], count: 1 }], ...needs('ben') }),
    ], { calendars, resources }))).toEqual([
      [[0, 1000]], [[0, 50], [50, 100], [200, 300]], [[20, 90], [250, 400]], [[20, 50], [50, 90], [250, 300]], [[80, 90], [250, 260]],
    ]);
  });

  it.each(times(5))('are found by the moment: seed %i', (seed) => {
    const dice = new Dice(500 + seed);
    let at = dice.whole(0, 300);
    const open: Interval[] = times(dice.whole(0, 30)).map(() => {
      const start = at;
      const end = start + dice.whole(1, dice.is(0.1) ? 4000 : 300);
      at = end + dice.whole(0, 700);
      return { start, end };
    });
    const openings = new Openings(open, 15 * DAY);
    for (const t of [0, 1439, 1440, 1441, 15 * DAY - 1, 15 * DAY, 16 * DAY, 20 * DAY, ...open.flatMap(({ end, start }) => [start, end - 1, end])]) {
      const expected = t >= 16 * DAY ? open.length : open.filter(({ end }) => end <= t).length;
      expect([t, openings.firstAfter(t)]).toEqual([t, expected]);
    }
  });
});

const jig = { id: 'jig', capacity: 1 };

const orderly = (input: Problem, blockable: readonly string[] = []) => {
  const model = compile(input);
  const order = arrange(model);
  const isOrderly = findOrderly(model, order, listByKey(order, new Float64Array(model.count)), listRows(model), Uint8Array.from(input.resources, ({ id }) => Number(blockable.includes(id))));
  return input.resources.filter((_, r) => isOrderly[r] === 1).map(({ id }) => id);
};

const on = (resource: string, amount = 1, more: Partial<Activity> = {}) => ({ ...more, demands: [{ resource, amount }] });

const chain = (...lags: readonly Lag[]) => orderly(problem([activity('a', 5, on('jig')), activity('between', 5), activity('b', 5, on('jig'))], { resources: [jig], lags }));

const both = (through: boolean, more: Partial<Activity> = {}) => ({ ...more, demands: [{ resource: 'gun', amount: 1, throughPauses: through }, { resource: 'booth', amount: 1 }] });

const away = (more: Partial<Problem>) => orderly(problem([activity('drop', 5), activity('fetch', 5), activity('use', 5, on('jig'))], { resources: [jig], holds: [{ id: 'away', resource: 'jig', amount: 1, from: 'drop', to: 'fetch' }], ...more }));

describe('what needs no look', () => {
  const bench = { id: 'bench', capacity: 2 };

  it('is what nobody or too few ask for at once', () => {
    expect(orderly(problem([activity('a', 5, on('bench')), activity('b', 5, on('bench'))], { resources: [bench, jig] }))).toEqual(['bench', 'jig']);
    expect(orderly(problem([activity('a', 5, on('bench')), activity('b', 5, on('bench', 2))], { resources: [bench] }))).toEqual([]);
    expect(orderly(problem([activity('a', 5, on('bench'))], { resources: [bench] }), ['bench'])).toEqual([]);
  });

  it('is what its users have one after the other, by waits from end to start alone', () => {
    expect(chain(finishToStart('a', 'between'), finishToStart('between', 'b', 10))).toEqual(['jig']);
    expect(chain(finishToStart('a', 'b', -1))).toEqual([]);
    expect(chain({ ...finishToStart('a', 'b'), from: { activity: 'a', at: 'start' } })).toEqual([]);
    expect(chain({ ...finishToStart('a', 'b', 9), to: { activity: 'b', at: 'end' } })).toEqual([]);
    expect(chain(lag('b', 'a', undefined, 50))).toEqual([]);
    expect(chain(lag('a', 'b', { kind: 'table', step: 100, ready: [0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000] }))).toEqual(['jig']);
    expect(chain()).toEqual([]);
  });

  it('holds for more than a word of thirty-two', () => {
    const all = times(70).map((k) => activity(`a${k}`, 5, k % 35 === 0 ? on('jig') : {}));
    const lags = times(69).map((k) => finishToStart(`a${k}`, `a${k + 1}`));
    expect(orderly(problem(all, { resources: [jig], lags }))).toEqual(['jig']);
    expect(orderly(problem(all, { resources: [jig], lags: lags.filter((_, k) => k !== 33) }))).toEqual([]);
  });

  it('is what comes with the same other thing of one unit, which is looked at itself', () => {
    const gun = { id: 'gun', capacity: 1 };
    const booth = { id: 'booth', capacity: 1 };
    expect(orderly(problem([activity('a', 5, both(false)), activity('b', 5, both(false))], { resources: [gun, booth] }))).toEqual(['gun', 'booth'].slice(0, 1));
    expect(orderly(problem([activity('a', 5, both(false)), activity('b', 5, on('gun'))], { resources: [gun, booth] }))).toEqual(['booth']);
    // What is held through pauses is not covered by what is not.
    expect(orderly(problem([activity('a', 5, both(true, { mode: 'split' })), activity('b', 5, both(true, { mode: 'split' }))], { resources: [gun, booth] }))).toEqual(['booth']);
    expect(orderly(problem([activity('a', 5, both(true)), activity('b', 5, both(true))], { resources: [gun, booth] }))).toEqual(['gun']);
  });

  it('is a place that is wide enough for all whom one person could serve', () => {
    const ann = { id: 'ann', capacity: 1 };
    const byAnn = (amount: number) => ({ ...on('bench', amount), crew: [{ pool: ['ann'], count: 1 }] });
    const three = [activity('a', 5, byAnn(1)), activity('b', 5, byAnn(1)), activity('c', 5, on('bench'))];
    expect(orderly(problem(three, { resources: [bench, ann] }), ['ann'])).toEqual(['bench']);
    expect(orderly(problem([...three, activity('d', 5, on('bench'))], { resources: [bench, ann] }), ['ann'])).toEqual([]);
    expect(orderly(problem([activity('a', 5, byAnn(2)), activity('b', 5, byAnn(1)), activity('c', 5, on('bench'))], { resources: [bench, ann] }), ['ann'])).toEqual([]);
  });

  it('is no part that a hold keeps, but where its turns follow one another', () => {
    expect(away({ lags: [finishToStart('drop', 'fetch')] })).toEqual([]);
    expect(away({ lags: [finishToStart('drop', 'fetch'), finishToStart('fetch', 'use')] })).toEqual(['jig']);
    expect(away({ lags: [finishToStart('drop', 'fetch'), finishToStart('drop', 'use')] })).toEqual([]);
    expect(away({ lags: [finishToStart('drop', 'fetch'), finishToStart('use', 'drop')] })).toEqual(['jig']);
  });
});

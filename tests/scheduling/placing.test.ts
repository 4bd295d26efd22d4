/** Where one activity fits among others, with whom, and what stands in the way: worked out by hand. */
import { describe, expect, it } from 'vitest';
import type { Activity, Problem } from '@/lib/scheduling';
import { CrewChoice } from '@/lib/scheduling/crew-choice';
import { FAR } from '@/lib/scheduling/calendar-index';
import { compile } from '@/lib/scheduling/compile';
import { Placer } from '@/lib/scheduling/placer';
import { rate } from '@/lib/scheduling/score';
import { activity, finishToStart, problem } from './simple';

const shop = { id: 'shop', intervals: [{ start: 0, end: 100 }, { start: 200, end: 300 }, { start: 400, end: 500 }] };
const people = ['ann', 'ben', 'cem'].map((id) => ({ id, capacity: 1 }));
const crew = (...needs: readonly (readonly [pool: string, count?: number])[]): Partial<Activity> => ({ crew: needs.map(([pool, count = 1]) => ({ pool: pool.split(' '), count })) });
const onJig = (amount = 1, throughPauses = false): Partial<Activity> => ({ demands: [{ resource: 'jig', amount, throughPauses }] });

/** A board on which activities are placed by name. */
class Board {
  readonly placer: Placer;
  private readonly index: ReadonlyMap<string, number>;

  constructor(readonly input: Problem) {
    this.placer = new Placer(compile(input));
    this.placer.clear();
    this.index = new Map(input.activities.map(({ id }, i) => [id, i]));
  }

  find(id: string, from = 0, latest = 900): number {
    return this.placer.findStart(this.index.get(id)!, from, latest);
  }

  fits(id: string, at: number): boolean {
    return this.placer.fits(this.index.get(id)!, at);
  }

  /** Places each at the first start from the moment on; returns the starts. */
  put(...ids: readonly (readonly [id: string, from: number])[]): number[] {
    return ids.map(([id, from]) => {
      const at = this.find(id, from);
      if (at >= 0) this.placer.place(this.index.get(id)!, at);
      return at;
    });
  }

  remove(id: string): void {
    this.placer.remove(this.index.get(id)!);
  }

  crewOf(id: string): readonly string[] {
    const { from } = this.placer.model.crew;
    const i = this.index.get(id)!;
    return Array.from(this.placer.crew.subarray(from[i]!, from[i + 1]!), (r) => this.input.resources[r]!.id);
  }

  /** What pushed a start on, in its order. */
  pushes(id: string, from = 0, latest = 900): string[] {
    const told: string[] = [];
    this.placer.listener = { pushed: (obstacle, index, start, to) => told.push(`${obstacle} ${index} ${start}-${to >= FAR ? 'never' : to}`) };
    this.find(id, from, latest);
    this.placer.listener = null;
    return told;
  }
}

const board = (activities: readonly Activity[], more: Partial<Problem> = {}) => new Board(problem(activities, { calendars: [shop], resources: [...people, { id: 'jig', capacity: 2 }], ...more }));

const byAnn = (duration: number, id: string, more: Partial<Activity> = {}) => activity(id, duration, { demands: [{ resource: 'ann', amount: 1 }], ...more });

const noisy = (id: string, perMinute: number) => activity(id, 20, { ...crew(['ann ben']), doses: [{ kind: 'noise', perMinute }, { kind: 'dust', perMinute: 1 }] });

describe('budgets', () => {
  const ann = { id: 'x', resource: 'ann' };

  it('are asked where work overlaps any of them, and given back', () => {
    const one = board([byAnn(40, 'a'), byAnn(20, 'b'), byAnn(50, 'c')], { budgets: [{ ...ann, id: 'first', within: { start: 0, end: 100 }, limit: 50 }, { ...ann, id: 'second', within: { start: 50, end: 150 }, limit: 60 }] });
    expect(one.put(['a', 0], ['b', 0])).toEqual([0, 90]);
    expect(one.find('c')).toBe(110);
    one.remove('b');
    expect([one.find('c'), one.fits('c', 90), one.fits('c', 89), one.find('c', 0, 89)]).toEqual([90, true, false, -1]);
    expect(one.pushes('c')).toEqual(['resource 0 0-40', 'budget 0 40-90']);
    one.remove('a');
    expect([one.find('c'), one.find('c', 1)]).toEqual([0, 1]);
  });

  it('push split work on by its own minutes, and what is held through pauses by the clock', () => {
    const split = { calendar: 'shop', mode: 'split' } as const;
    const one = board([byAnn(150, 'a', split), activity('b', 120, { ...split, ...onJig(2, true) }), activity('c', 30, { calendar: 'shop', ...onJig(1, true) })], {
      budgets: [{ ...ann, within: { start: 0, end: 300 }, limit: 120 }, { id: 'jig', resource: 'jig', within: { start: 0, end: 300 }, limit: 450 }],
    });
    expect(one.put(['a', 0], ['b', 0])).toEqual([80, 0]);
    expect([one.find('c'), one.pushes('c', 250)]).toEqual([400, ['budget 1 250-290']]);
  });

  it('count doses alone of those who take them', () => {
    const one = board([noisy('a', 2), noisy('b', 2), noisy('c', 1), noisy('d', 1), noisy('e', 3)], {
      budgets: ['ann', 'ben'].map((resource) => ({ id: resource, resource, dose: 'noise', within: { start: 0, end: 500 }, limit: 60 })),
    });
    expect(one.put(['a', 0], ['b', 0])).toEqual([0, 0]);
    expect(one.put(['c', 0], ['d', 0])).toEqual([20, 20]);
    expect([one.crewOf('a'), one.crewOf('b'), one.crewOf('c'), one.crewOf('d')]).toEqual([['ann'], ['ben'], ['ann'], ['ben']]);
    // 60 minutes of dose are used up by each: only what reaches past the day is left.
    expect(one.find('e')).toBe(500);
    one.remove('c');
    expect([one.find('c'), one.find('e')]).toEqual([20, 494]);
  });
});

describe('holds', () => {
  const away = { id: 'away', resource: 'jig', amount: 1, from: 'drop', to: 'fetch' };
  const one = () => board([activity('drop', 10), activity('fetch', 10), activity('use', 30, onJig(2)), activity('share', 30, onJig(1))], { holds: [away], lags: [finishToStart('drop', 'fetch')] });

  it('keep their unit from the first start to the last end', () => {
    const all = one();
    expect(all.put(['drop', 20], ['fetch', 60])).toEqual([20, 60]);
    expect([all.find('use'), all.find('use', 70), all.find('share'), all.fits('use', 69)]).toEqual([70, 70, 0, false]);
    all.remove('fetch');
    expect([all.find('use'), all.find('use', 29), all.find('use', 30)]).toEqual([30, 30, 30]);
    all.remove('drop');
    expect(all.find('use')).toBe(0);
  });

  it('tell which first activity has to move when there is no room to the last', () => {
    const all = one();
    expect(all.put(['drop', 0], ['use', 50])).toEqual([0, 50]);
    expect([all.find('fetch', 60), all.placer.holds.blame, all.placer.holds.blameFrom]).toEqual([-1, 0, 80]);
    expect([all.find('fetch', 10, 40), all.placer.holds.blame]).toEqual([10, -1]);
    expect(all.fits('fetch', 40)).toBe(true);
    expect(all.fits('fetch', 41)).toBe(false);
    expect(all.pushes('fetch', 60)).toEqual(['hold 0 60-never']);
  });

  it('begin where the rest of the way is free', () => {
    const all = one();
    expect(all.put(['use', 50], ['fetch', 100], ['drop', 40])).toEqual([50, 100, 80]);
    expect(all.placer.holds.taken[0]).toBe(110);
    all.remove('drop');
    expect([all.placer.holds.taken[0], all.pushes('drop', 30)]).toEqual([-1, ['hold 0 30-80']]);
  });

  it('last to the horizon when they are extended, as far as that is free', () => {
    const all = one();
    all.put(['drop', 0]);
    expect(all.placer.holds.conflict(0, 1000)).toBe(0);
    all.put(['use', 500]);
    expect(all.placer.holds.conflict(0, 1000)).toBe(530);
    all.placer.holds.extend(0, 500);
    expect([all.find('share', 100), all.find('use', 100, 469), all.placer.holds.taken[0]]).toEqual([100, -1, 500]);
  });
});

const needing = (id: string, ...needs: readonly (readonly [string, number?])[]) => activity(id, 20, crew(...needs));

const before = (id: string, start: number, ...previousCrew: readonly string[]) => activity(id, 20, { ...crew(['ann ben cem', 2]), previousStart: start, previousCrew });

describe('people', () => {

  it('are the least loaded of those who are free, the first of alike ones', () => {
    const one = board([needing('a', ['ann ben']), needing('b', ['ann ben']), needing('c', ['ann ben cem']), needing('d', ['ann ben']), activity('e', 5, crew(['ann ben'])), needing('f', ['ann ben'])]);
    expect(one.put(['a', 0], ['b', 0], ['c', 0], ['d', 0], ['e', 50], ['f', 60])).toEqual([0, 0, 0, 20, 50, 60]);
    expect(['a', 'b', 'c', 'd', 'e', 'f'].map((id) => one.crewOf(id).join(' '))).toEqual(['ann', 'ben', 'cem', 'ann', 'ben', 'ben']);
    one.remove('d');
    expect([...one.placer.load]).toEqual([20, 45, 20, 0]);
  });

  it('make way for the one who alone can do the other thing', () => {
    const one = board([needing('a', ['ann ben'], ['ann']), needing('b', ['ann ben cem', 2], ['cem']), needing('c', ['ann ben'], ['ben cem'], ['cem'])]);
    expect(one.put(['a', 0], ['b', 50], ['c', 100])).toEqual([0, 50, 100]);
    expect(['a', 'b', 'c'].map((id) => one.crewOf(id).join(' '))).toEqual(['ben ann', 'ben ann cem', 'ann ben cem']);
  });

  it('are those of the accepted plan where they are free, whatever their load', () => {
    const one = board([needing('busy', ['ben']), before('a', 30, 'ben', 'cem'), before('b', 30, 'cem', 'ben'), before('c', 0, 'ben', 'cem'), before('d', 90, 'ben')]);
    expect(one.put(['busy', 0], ['a', 30])).toEqual([0, 30]);
    expect(one.crewOf('a')).toEqual(['ben', 'cem']);
    one.remove('a');
    one.put(['b', 30]);
    expect(one.crewOf('b')).toEqual(['cem', 'ben']);
    one.remove('b');
    // Ben is busy: who was there before is taken all the same, and somebody for him.
    one.put(['c', 0]);
    expect([...one.crewOf('c')].toSorted()).toEqual(['ann', 'cem']);
    one.put(['d', 90]);
    expect([...one.crewOf('d')].toSorted()).toContain('ben');
  });

  it('wait until enough of them are there together, each for what they do besides', () => {
    const one = board([needing('a', ['ann']), activity('b', 30, crew(['ben'])), needing('both', ['ann ben', 2]), activity('more', 20, { ...crew(['ann ben']), demands: [{ resource: 'ann', amount: 1 }] })], { resources: [{ id: 'ann', capacity: 2 }, { id: 'ben', capacity: 1 }] });
    expect(one.put(['a', 0], ['b', 0])).toEqual([0, 0]);
    expect([one.find('both'), one.find('more'), one.pushes('both')]).toEqual([30, 20, ['crew 2 0-30']]);
  });

  it('are asked one by one, none of them again before they can', () => {
    const asked: string[] = [];
    const { model } = board([needing('a', ['ann ben', 2])]).placer;
    const choice = new CrewChoice({ model, load: new Float64Array(4), waitFor: (_, person, units, t) => {
      asked.push(`${person} ${units} ${t}`);
      return person === 0 && t < 50 ? 50 : person === 1 && t < 20 ? 20 : 0;
    } });
    choice.begin();
    expect([choice.choose(0, 0), choice.choose(0, 20), choice.choose(0, 50), [...choice.pick]]).toEqual([20, 50, 0, [0, 1]]);
    expect(asked).toEqual(['0 1 0', '1 1 0', '1 1 20', '0 1 50', '1 1 50']);
    choice.begin();
    expect([choice.choose(0, 20), asked.slice(5)]).toEqual([50, ['0 1 20', '1 1 20']]);
  });
});

const scored = (activities: readonly Activity[], dates: readonly (readonly [start: number, end: number, ...crew: readonly number[]] | null)[], more: Partial<Problem> = {}) => {
  const model = compile(problem(activities, { calendars: [shop], resources: people, ...more }));
  const into = new Float64Array(7);
  rate(model, {
    status: Uint8Array.from(dates, (row) => (row === null ? 2 : 1)), start: Int32Array.from(dates, (row) => row?.[0] ?? 0), end: Int32Array.from(dates, (row) => row?.[1] ?? 0),
    crew: Int32Array.from(dates.flatMap((row) => row?.slice(2) ?? [])),
  }, into);
  return [...into];
};

describe('the score', () => {
  const split = { calendar: 'shop', mode: 'split' } as const;

  it('counts what is left out as late to the horizon, and moved if it had a start', () => {
    const all = [activity('a', 10, { due: { at: 30, weight: 2 }, previousStart: 5 }), activity('b', 10, { due: { at: 900, weight: 3 }, previousStart: 5 }), activity('c', 10)];
    expect(scored(all, [[5, 15], null, [50, 60]])).toEqual([1, 300, 0, 1, 60, 0, 75]);
    expect(scored(all, [[25, 35], [5, 15], null])).toEqual([1, 10, 0, 1, 35, 0, 50]);
    expect(scored(all, [[25, 35], [5, 15], null], { objective: ['cost', 'makespan', 'moved', 'shortages', 'tardiness'] })).toEqual([1, 0, 35, 1, 0, 10, 50]);
  });

  it('counts other people as a change, in whatever order they stand', () => {
    const all = [activity('a', 10, { ...crew(['ann ben cem', 2]), previousStart: 5, previousCrew: ['ben', 'ann'] })];
    const moved = (...who: readonly number[]) => scored(all, [[5, 15, ...who]])[3];
    expect([moved(0, 1), moved(1, 0), moved(0, 2), moved(2, 1)]).toEqual([0, 0, 1, 1]);
    expect(scored([activity('a', 10, { ...crew(['ann ben']), previousStart: 5, previousCrew: ['ann', 'ben'] })], [[5, 15, 0]])[3]).toBe(1);
    expect(scored([activity('a', 10, { ...crew(['ann ben']), previousStart: 5, previousCrew: ['gone'] })], [[5, 15, 0]])[3]).toBe(1);
  });

  it('counts quotas that are missed', () => {
    const quotas = [[15, 1], [14, 1], [60, 2], [60, 3], [0, 0]].map(([when, least], k) => ({ id: `q${k}`, at: when!, least: least!, among: ['a', 'b', 'c'] }));
    expect(scored(['a', 'b', 'c'].map((id) => activity(id, 10)), [[5, 15], [50, 60], null], { quotas })[2]).toBe(2);
  });

  it('pays each span once, where a counted person works in it, and not for pauses', () => {
    const upkeep = { resources: ['ann'], spans: [[0, 50, 1], [50, 100, 2], [110, 190, 4], [200, 250, 8], [250, 300, 16]].map(([start, end, cost]) => ({ within: { start: start!, end: end! }, cost: cost! })) };
    const paid = (row: Activity, start: number, end: number, ...who: readonly number[]) => scored([row], [[start, end, ...who]], { upkeep })[5];
    const byAnyone = crew(['ann ben']);
    expect([paid(activity('a', 10, byAnyone), 40, 50, 0), paid(activity('a', 11, byAnyone), 40, 51, 0), paid(activity('a', 10, byAnyone), 40, 50, 1), paid(activity('a', 10, byAnyone), 100, 110, 0)]).toEqual([1, 3, 0, 0]);
    expect([paid(activity('a', 60, { ...byAnyone, ...split }), 90, 250, 0), paid(activity('a', 61, { ...byAnyone, ...split }), 90, 251, 0), paid(activity('a', 160, byAnyone), 90, 250, 0)]).toEqual([10, 26, 14]);
    expect([paid(activity('a', 10, { demands: [{ resource: 'ann', amount: 1 }] }), 60, 70), paid(activity('a', 0, byAnyone), 60, 60, 0)]).toEqual([2, 0]);
  });
});

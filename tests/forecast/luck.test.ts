import { describe, expect, it } from 'vitest';
import { checkAssumptions, DEFAULT_ASSUMPTIONS, meanOf } from '@/lib/forecast';
import { coldRatio } from '@/lib/forecast/cold-spell';
import { retakeShares, Simulation, type ForecastInput } from '@/lib/simulation';
import { celsius } from '@/lib/units';
import { demoSeries } from '@/seed/demo';

const WEEK = 10_080;
const DAY = 1440;

const evenings = (from: number) => Array.from({ length: 7 }, (_, day) => ({ start: from + day * DAY, end: from + day * DAY + 1200 }));

/** A coat of 60 minutes, laid by somebody in the first two weeks' evenings, and work of 30 minutes 600 minutes after it. */
function coatAndWork(luck: Partial<ForecastInput>): ForecastInput {
  const weeks = [evenings(0), evenings(WEEK)];
  const crew = [{ pool: ['joan'], count: 1 }];
  const wait = { id: 'dries', from: { activity: 'coat', at: 'end' }, to: { activity: 'work', at: 'start' }, min: { kind: 'elapsed', minutes: 600 } } as const;
  const again = { ...wait, id: 'dries again', from: { activity: 'redo', at: 'end' } } as const;
  const first = { ...wait, id: 'dries first', to: { activity: 'redo', at: 'start' } } as const;
  return {
    problem: {
      horizon: 3 * WEEK, calendars: [{ id: 'evenings', intervals: weeks.flat() }], resources: [{ id: 'joan', capacity: 1, calendar: 'evenings' }],
      activities: [
        { id: 'coat', duration: 60, mode: 'one-go', demands: [], crew }, { id: 'redo', duration: 60, mode: 'one-go', demands: [], crew },
        { id: 'work', duration: 30, mode: 'one-go', demands: [] },
      ],
      lags: [wait, again, first],
    },
    policy: ['coat', 'redo', 'work'].map((activity, start) => ({ activity, start, crew: activity === 'work' ? [] : ['joan'] })),
    lengths: [], groups: [], delays: [], spoils: [{ activity: 'coat', redo: 'redo', chance: 0 }], cold: null,
    absences: [{ resource: 'joan', chance: 0, weeks }], watched: ['work'], seed: 1, ...luck,
  };
}

const ends = (input: ForecastInput, runs = 1): Int32Array => new Simulation(input).runMany(0, runs).watched;
const calm = coatAndWork({});
const away = (chance: number): ForecastInput => ({ ...calm, absences: calm.absences.map((absence) => ({ ...absence, chance })) });
const withColdSpells = (begins: number, perMille: number): ForecastInput => ({ ...calm, cold: { begins, lasts: begins, weeks: 3, coats: [{ activity: 'coat', week: 0, lags: ['dries', 'dries again'], perMille }] } });

describe('luck in a simulation', () => {
  it('leaves the plan alone when nothing happens: a coat that holds is laid once', () => {
    expect([...ends(calm)]).toEqual([60 + 600 + 30]);
  });

  it('lays a spoilt coat again once it is dry, and what follows waits for the second one', () => {
    expect([...ends({ ...calm, spoils: [{ activity: 'coat', redo: 'redo', chance: 1 }] })]).toEqual([60 + 600 + 60 + 600 + 30]);
    const block = new Simulation({ ...calm, spoils: [{ activity: 'coat', redo: 'redo', chance: 0.25 }] }).runMany(0, 2000);
    expect(block.spoiltCoats / 2000).toBeCloseTo(0.25, 1);
  });

  it('lengthens the waits of coats that are laid in a cold week, each by its own share', () => {
    expect([...ends(withColdSpells(1, 2500))]).toEqual([60 + 1500 + 30]);
    expect([...ends(withColdSpells(1, 1000))]).toEqual([...ends(calm)]);
    expect([...ends(withColdSpells(0, 2500))]).toEqual([...ends(calm)]);
    const shares = ends(withColdSpells(0.3, 2500), 2000).filter((end) => end > 700).length / 2000;
    expect(shares).toBeCloseTo(0.3, 1);
  });

  it('has a person miss a whole week, no less and no more', () => {
    const found = ends(away(0.25), 2000);
    const late = found.filter((end) => end > 700);
    expect(late.length / 2000).toBeCloseTo(0.25, 1);
    // Both weeks missed: no place at all before the horizon.
    for (const end of late) expect([WEEK + 690, 3 * WEEK]).toContain(end);
    expect([...ends(away(1))]).toEqual([3 * WEEK]);
  });

  it('counts the takes made again as a negative binomial would', () => {
    const shares = retakeShares(3, 0.25, 12);
    expect(meanOf([shares.reduce((sum, share) => sum + share, 0)])).toBeCloseTo(1, 12);
    // Mean takes x p / (1 - p), the tail beyond twelve aside.
    expect(shares.reduce((sum, share, again) => sum + again * share, 0)).toBeCloseTo(1, 3);
    expect([retakeShares(0, 0.25, 12), retakeShares(3, 0, 12)]).toEqual([[], []]);
    expect(retakeShares(2, 1, 3)).toEqual([0, 0, 0, 1]);
  });
});

describe('a cold spell', () => {
  const material = { ...demoSeries('2026-11-30').materials[0]!, process: null, minimumTemperature: celsius(5), doublingPer: 10 };

  it('slows a coat down by the law of its material, not by one factor for all', () => {
    const [slow, quick] = [coldRatio({ ...material, doublingPer: 20 }, 20, 10), coldRatio(material, 20, 10)];
    expect(quick).toBeGreaterThan(slow);
    expect(slow).toBeGreaterThan(1);
    expect(coldRatio(material, 20, 0)).toBe(1);
  });

  it('lasts no longer than somebody would go without heating', () => {
    expect(coldRatio(material, 20, 200)).toBe(8);
  });
});

describe('assumptions that cannot be', () => {
  it.each(['retakeChance', 'lostChance', 'spoilChance', 'coldBegins', 'coldLasts', 'absenceChance'] as const)('a %s outside 0 to 1 is refused by name', (name) => {
    for (const value of [-0.01, 1.01, NaN]) {
      const refused = checkAssumptions({ ...DEFAULT_ASSUMPTIONS, [name]: value });
      expect(refused.ok ? [] : refused.error).toMatchObject([{ code: 'chance-out-of-range', path: [name], fix: 'Give 0.05 for one in twenty.' }]);
    }
    for (const value of [0, 1]) expect(checkAssumptions({ ...DEFAULT_ASSUMPTIONS, [name]: value }).ok).toBe(true);
  });

  it('names a length below 0 too, with every other fault at once', () => {
    const refused = checkAssumptions({ ...DEFAULT_ASSUMPTIONS, coldDrop: -1, spoilChance: 2 });
    expect(refused.ok ? [] : refused.error.map(({ code }) => code)).toEqual(['chance-out-of-range', 'assumption-below-zero']);
  });
});

import { describe, expect, it } from 'vitest';
import { countNoise, countVibration, exposureRates, followVapour, isocyanateWait, listPersonDays, type SprayedVapour } from '@/lib/safety';
import { unwrap, type Result } from '@/lib/result';
import { at, sampleSeries } from '../build/sample-series';
import { changeTask, taskOf } from './sample';

const codes = (result: Result<unknown>): readonly string[] => (result.ok ? [] : result.error.map(({ code }) => code));

describe('noise and vibration of a day', () => {
  it('refuse a negative level, one out of reach, and an exposure without a duration, all at once', () => {
    expect(codes(countNoise([{ level: -1, minutes: 10 }]))).toEqual(['exposure-out-of-range']);
    expect(codes(countNoise([{ level: 90, minutes: 0 }]))).toEqual(['exposure-without-duration']);
    expect(codes(countNoise([{ level: 151, minutes: -3 }, { level: Number.NaN, minutes: Number.NaN }]))).toEqual(['exposure-out-of-range', 'exposure-without-duration', 'exposure-out-of-range', 'exposure-without-duration']);
    expect(codes(countVibration([{ magnitude: -0.1, minutes: 1441 }]))).toEqual(['exposure-out-of-range', 'exposure-without-duration']);
    expect(countNoise([{ level: 0, minutes: 1440 }]).ok).toBe(true);
  });

  it('count nothing below 80 dB(A) in the doses, and everything in the daily level', () => {
    const day = unwrap(countNoise([{ level: 79.9, minutes: 480 }]));
    expect([day.oshaDose, day.nioshDose]).toEqual([0, 0]);
    expect(day.dailyLevel).toBeCloseTo(79.9, 6);
    expect(unwrap(countNoise([{ level: 80, minutes: 480 }])).oshaDose).toBeCloseTo(25, 6);
    expect(unwrap(countNoise([])).dailyLevel).toBeNull();
  });
});

describe('vapour of a sprayed coat', () => {
  const sprayed: SprayedVapour = { sprayed: 200, solventShare: 0.5, density: 0.87, molarMass: 106.17, volume: 50, airChanges: 30, minutes: 30, limit: 50 };

  it('stays below the closed room, rises with the amount and falls with the air changes', () => {
    const course = unwrap(followVapour(sprayed));
    expect(course.closedRoom).toBeCloseTo(401, 0);
    expect(course.peak).toBeLessThan(course.closedRoom);
    expect(unwrap(followVapour({ ...sprayed, sprayed: 400 })).peak).toBeCloseTo(course.peak * 2, 6);
    expect(unwrap(followVapour({ ...sprayed, airChanges: 60 })).peak).toBeLessThan(course.peak);
  });

  it('says when it is below the limit again: at once when it never was above, never without air', () => {
    const course = unwrap(followVapour(sprayed));
    expect(course.belowLimitAfter).toBeCloseTo((Math.log(course.peak / 50) / 10) * 60, 6);
    expect(unwrap(followVapour({ ...sprayed, sprayed: 1 })).belowLimitAfter).toBe(0);
    expect(unwrap(followVapour({ ...sprayed, airChanges: 0 })).belowLimitAfter).toBeNull();
  });

  it('refuses negative amounts, no room, no duration', () => {
    expect(codes(followVapour({ ...sprayed, sprayed: -1, volume: 0, minutes: 0 }))).toEqual(['exposure-out-of-range', 'exposure-out-of-range', 'exposure-without-duration']);
    expect(codes(followVapour({ ...sprayed, solventShare: 1.01, limit: 0 }))).toEqual(['exposure-out-of-range', 'exposure-out-of-range']);
  });
});

describe('the wait after isocyanate', () => {
  it('is half an hour at least, longer where the air moves slowly, and unknown where none moves', () => {
    expect(unwrap(isocyanateWait(60))).toBe(30);
    expect(unwrap(isocyanateWait(6))).toBe(47);
    for (const airChanges of [null, 0, -2, Number.NaN]) expect(codes(isocyanateWait(airChanges))).toEqual(['clearance-unknown']);
  });
});

const tools = sampleSeries({ equipment: [
  { kind: 'equipment', id: 'equipment-gun', revision: 1, order: 0, name: 'Grinder', count: 1, exposure: { noise: 100, vibration: 5, source: 'handbook' } },
  { kind: 'equipment', id: 'old', revision: 1, order: 1, name: 'Old drill', count: 1, exposure: { noise: null, vibration: null, source: '' } },
] });
const grinding = (share: number, equipmentIds: readonly string[] = ['equipment-gun']) => changeTask(tools, 'task-strip', { equipmentIds, isNoisy: true, hazards: { facts: [], toolShare: share, sprayed: null, departure: null } });
const piece = (date: string, from: string, to: string) => ({ taskId: 'task-strip', personIds: ['person-robin', 'person-kim'], start: at(date, from), end: at(date, to) });
const at100 = (minutes: string) => listPersonDays(grinding(1), [piece('2026-12-01', '18:00', minutes)])[0];
const long = (hours: string) => listPersonDays(grinding(1), [piece('2026-12-01', '08:00', hours)])[0]?.vibrationLevel;

describe('exposure by person and day', () => {
  it('adds the tool time of each piece for everybody on it, each day for itself', () => {
    const days = listPersonDays(grinding(0.5), [piece('2026-12-01', '18:00', '19:00'), piece('2026-12-02', '18:00', '20:00')]);
    expect(days.map(({ date, personId }) => `${date} ${personId}`)).toEqual(['2026-12-01 person-kim', '2026-12-01 person-robin', '2026-12-02 person-kim', '2026-12-02 person-robin']);
    expect(days[0]?.noise.nioshDose).toBeCloseTo(200, 6);
    expect(days[0]?.vibration.points).toBeCloseTo(25, 6);
    expect(days[2]?.noise.oshaDose).toBeCloseTo(50, 6);
  });

  it('counts work past midnight for the next day', () => {
    const days = listPersonDays(grinding(1), [{ ...piece('2026-12-01', '23:00', '23:30'), personIds: ['person-kim'], end: at('2026-12-02', '01:00') }]);
    expect(days.map(({ date, vibration }) => [date, Math.round(vibration.points)])).toEqual([['2026-12-01', 50], ['2026-12-02', 50]]);
  });

  it('judges by action and limit values', () => {
    expect(at100('18:04')?.noiseLevel).toBe('below');
    expect(at100('18:06')?.noiseLevel).toBe('action');
    expect(at100('18:20')?.noiseLevel).toBe('limit');
    expect(at100('18:30')?.noiseLevel).toBe('over');
    expect([long('09:59'), long('10:00'), long('16:00'), long('16:01')]).toEqual(['below', 'action', 'limit', 'over']);
  });

  it('names tools that are loud and have no figure', () => {
    expect(listPersonDays(grinding(1, ['old']), [piece('2026-12-01', '18:00', '19:00')])[0]?.unknownTools).toEqual(['Old drill']);
    expect(listPersonDays(grinding(1, []), [piece('2026-12-01', '18:00', '19:00')])[0]?.unknownTools[0]).toContain('no tool named');
  });
});

describe('what a minute takes of the daily limits', () => {
  it('is nothing without figures, and the points and the share of the day with them', () => {
    expect(exposureRates(grinding(1, ['old']), taskOf(grinding(1, ['old']), 'task-strip'))).toEqual([]);
    const rates = exposureRates(grinding(0.5), taskOf(grinding(0.5), 'task-strip'));
    expect(rates.map(({ kind, dailyLimit }) => [kind, dailyLimit])).toEqual([['vibration', 400], ['noise', 1]]);
    // 5 m/s2 is 50 points an hour; half of the time is 25.
    expect((rates[0]?.perMinute ?? 0) * 60).toBeCloseTo(25, 6);
    // 100 dB(A) less 15 is 85: 2 dB under the limit, 10^(-0.2) of a day in eight hours.
    expect((rates[1]?.perMinute ?? 0) * 480).toBeCloseTo(0.5 * 10 ** -0.2, 6);
  });

  it('adds up to what a person is counted to get from the pieces that the plan gives them', () => {
    const document = grinding(0.5);
    const [rate] = exposureRates(document, taskOf(document, 'task-strip'));
    const [day] = listPersonDays(document, [piece('2026-12-01', '18:00', '19:30')]);
    expect(day?.vibration.points).toBeCloseTo(90 * (rate?.perMinute ?? 0), 6);
  });

  it('counts vapour for those who spray, by the mean of its build-up, as without a mask', () => {
    const sample = sampleSeries();
    const spraying = changeTask({
      ...sample,
      places: sample.places.map((place) => ({ ...place, air: { volume: 50, airChanges: 30, source: '' } })),
      materials: sample.materials.map((material) => ({ ...material, hasSolvent: true, vapour: { density: 0.87, molarMass: 106.17, solventShare: 0.5, limit: 50, source: '' } })),
    }, 'task-prime', { hazards: { facts: ['spraying'], toolShare: 1, sprayed: 200, departure: null } });
    const likely = taskOf(spraying, 'task-prime').effort.likely;
    const [day] = listPersonDays(spraying, [{ ...piece('2026-12-01', '18:00', '19:00'), taskId: 'task-prime', personIds: ['person-kim'] }]);
    const course = unwrap(followVapour({ sprayed: 200, solventShare: 0.5, density: 0.87, molarMass: 106.17, volume: 50, airChanges: 30, minutes: likely, limit: 50 }));
    expect(course.mean).toBeLessThan(course.peak);
    expect(course.mean).toBeGreaterThan(course.peak / 2);
    expect(day?.vapour).toBeCloseTo((course.mean / 50) * (60 / 480), 9);
    expect(listPersonDays(sample, [{ ...piece('2026-12-01', '18:00', '19:00'), taskId: 'task-prime' }])[0]?.vapour).toBe(0);
  });
});

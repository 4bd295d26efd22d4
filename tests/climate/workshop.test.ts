import { expect, test } from 'vitest';
import { startOfDay } from '@/lib/calendar';
import {
  checkHeating, checkRoom, dewMargins, fitRoom, heatRoom, measureHours, NO_HEATING, outsideSeries, saturationPressure, workshopClimate, WATER_PER_KWH,
  type DailyWeather, type HeatingPlan, type OutsideSeries, type Reading, type Room,
} from '@/lib/climate';
import { unwrap } from '@/lib/result';
import { addMinutes, instant } from '@/lib/units';

const LONDON = 'Europe/London';
const ROOM: Room = { timeConstant: 8, heatLoss: 200, offset: 1.5, volume: 150, airChanges: 0.8, moisture: 0.05, surfaceLag: 2 };
const week: DailyWeather[] = Array.from({ length: 7 }, (_, day) => ({ date: `2026-12-0${day + 1}`, low: day % 3, high: 6 + (day % 4), humidity: 85 }));
const outside = unwrap(outsideSeries(week, { from: '2026-12-01', to: '2026-12-07' }, LONDON));

const steady = (temperature: number, hours: number): OutsideSeries => ({
  origin: instant(0), step: 60, air: new Float64Array(hours).fill(temperature), vapour: new Float64Array(hours).fill(6), filledDays: [],
});
const at = (minute: number) => addMinutes(instant(0), minute);
const electric = (kilowatts: number, runs: HeatingPlan['runs']): HeatingPlan => ({
  heater: { kilowatts, kind: 'electric', fuel: null, isIgnitionSafe: false }, runs,
});

test('the outside series meets every low and high and does not jump at midnight', () => {
  expect(outside.air.length).toBe(7 * 24);
  expect(outside.origin).toBe(startOfDay('2026-12-01', LONDON));
  for (let day = 1; day < 6; day += 1) {
    const hours = Array.from(outside.air.subarray(day * 24, day * 24 + 24));
    expect(Math.abs(Math.max(...hours) - week[day]!.high)).toBeLessThan(0.5);
    expect(Math.abs(Math.min(...hours.slice(0, 12)) - week[day]!.low)).toBeLessThan(0.5);
  }
  const jumps = [...outside.air].slice(1).map((t, k) => Math.abs(t - outside.air[k]!));
  expect(Math.max(...jumps)).toBeLessThan(2.2);
});

test('the night falls from the high of the day before to the low of the day after', () => {
  const days = [{ date: '2026-12-01', low: 4, high: 10 }, { date: '2026-12-02', low: 2, high: 20 }, { date: '2026-12-03', low: 8, high: 12 }];
  const { air } = unwrap(outsideSeries(days, { from: '2026-12-02', to: '2026-12-02' }, LONDON));
  // Table 6: .82 at hour 24 and .88 at hour 1, .75 at hour 23.
  expect(air[0]).toBeCloseTo(10 - 8 * 0.85, 9);
  expect(air[23]).toBeCloseTo(20 - 12 * 0.785, 9);
});

test('a day of 25 hours has 25 values, its low still at five on the wall', () => {
  const days = ['2026-10-24', '2026-10-25', '2026-10-26'].map((date) => ({ date, low: 4, high: 14 }));
  const series = unwrap(outsideSeries(days, { from: '2026-10-25', to: '2026-10-25' }, LONDON));
  expect(series.air.length).toBe(25);
  // 05:00 GMT is six hours after 00:00 BST.
  const low = series.air.indexOf(Math.min(...series.air));
  expect([5, 6]).toContain(low);
  expect(series.air[6]).toBeCloseTo(4.1, 6);
});

test('a missing day lies between its neighbours and is named', () => {
  const days = [{ date: '2026-12-01', low: 0, high: 6 }, { date: '2026-12-03', low: 4, high: 10 }];
  const series = unwrap(outsideSeries(days, { from: '2026-12-01', to: '2026-12-04' }, LONDON));
  expect(series.filledDays).toEqual(['2026-12-02', '2026-12-04']);
  expect(series.air[24 + 14]).toBeCloseTo(8, 6);
});

test('weather that cannot be is refused with every reason at once', () => {
  const result = outsideSeries(
    [{ date: '2026-12-01', low: 9, high: 3 }, { date: '2026-12-01', low: 1, high: 99 }, { date: 'soon', low: 1, high: 2 }, { date: '2026-12-02', low: 1, high: 2, humidity: 0 }],
    { from: '2026-12-01', to: '2026-12-02' }, LONDON,
  );
  expect(result.ok).toBe(false);
  if (!result.ok) expect(result.error.map((found) => found.code)).toEqual(['weather-low-above-high', 'weather-range', 'weather-twice', 'weather-date', 'weather-humidity']);
});

const rangeOf = (values: Float64Array): number => Math.max(...values.slice(48)) - Math.min(...values.slice(48));

test('an unheated room follows the outside later and flatter', () => {
  const climate = workshopClimate({ outside, room: ROOM, heating: NO_HEATING, measured: null, start: null });
  expect(rangeOf(climate.air)).toBeLessThan(rangeOf(outside.air) * 0.7);
  expect(rangeOf(climate.surface)).toBeLessThan(rangeOf(climate.air));
  expect([...climate.heat].every((kwh) => kwh === 0)).toBe(true);
});

test('the step is exact: a steady outside gives the closed formula after any number of hours', () => {
  const climate = workshopClimate({ outside: steady(2, 48), room: { ...ROOM, offset: 0 }, heating: NO_HEATING, measured: null, start: 20 });
  for (const hour of [0, 5, 20, 47]) {
    const mean = 2 + 18 * 8 * (Math.exp(-hour / 8) - Math.exp(-(hour + 1) / 8));
    expect(climate.air[hour]).toBeCloseTo(mean, 9);
  }
});

test('heat put in equals heat lost plus heat stored', () => {
  const room = { timeConstant: 8, heatLoss: 200 };
  for (const [start, goal, setPoint, kilowatts, hours] of [[2, 2, 18, 6, 5], [2, 2, 18, 6, 0.3], [2, 2, 18, 1, 30], [20, 2, 18, 6, 9], [18, 2, 18, 6, 3], [10, 25, 18, 6, 9]] as const) {
    const piece = heatRoom(start, goal, room, hours, setPoint, kilowatts);
    const stored = (room.timeConstant * room.heatLoss * (piece.end - start)) / 1000;
    const lost = (room.heatLoss * (piece.mean - goal) * hours) / 1000;
    expect(piece.heat).toBeCloseTo(stored + lost, 9);
  }
});

test('a thermostat holds its set point when the heater can, and the room settles below it when it cannot', () => {
  const run = [{ start: instant(0), end: addMinutes(instant(0), 60 * 100), setPoint: 18 }];
  const room = { ...ROOM, offset: 0 };
  const strong = workshopClimate({ outside: steady(2, 100), room, heating: electric(6, run), measured: null, start: 2 });
  expect(strong.air[50]).toBeCloseTo(18, 9);
  expect(strong.heat[50]).toBeCloseTo(3.2, 9);
  const weak = workshopClimate({ outside: steady(2, 100), room, heating: electric(2, run), measured: null, start: 2 });
  expect(weak.air[99]).toBeCloseTo(12, 3);
  expect(weak.heat[99]).toBe(2);
});

test('heating that starts within an hour counts for its part of that hour', () => {
  const runs = [{ start: addMinutes(instant(0), 90), end: addMinutes(instant(0), 105), setPoint: 30 }];
  const climate = workshopClimate({ outside: steady(5, 4), room: ROOM, heating: electric(4, runs), measured: null, start: 5 });
  expect([...climate.heat]).toEqual([0, 1, 0, 0]);
});

const heatedDay = (heating: HeatingPlan) => workshopClimate({ outside: steady(2, 10), room: ROOM, heating, measured: null, start: 4 });

test('a flueless burner makes the air damper than an electric heater of the same power', () => {
  const runs = [{ start: instant(0), end: addMinutes(instant(0), 600), setPoint: 15 }];
  const wet: HeatingPlan = { heater: { kilowatts: 5, kind: 'flueless burner', fuel: 'propane', isIgnitionSafe: false }, runs };
  const flued: HeatingPlan = { heater: { ...wet.heater, kind: 'flued burner' }, runs };
  expect(heatedDay(wet).humidity[9]).toBeGreaterThan(heatedDay(flued).humidity[9]! + 10);
  expect(heatedDay(flued).humidity[9]).toBeCloseTo(heatedDay(electric(5, runs)).humidity[9]!, 9);
  expect(Math.min(...dewMargins(heatedDay(wet)))).toBeLessThan(Math.min(...dewMargins(heatedDay(flued))));
});

// Complete burning of propane, heat value from memory.
test('burning propane gives about 127 g of water a kWh', () => {
  expect(WATER_PER_KWH.propane * 1000).toBeCloseTo(127, 0);
});

test('indoor air of the same vapour is drier the warmer it is, and never above 100 %', () => {
  const climate = workshopClimate({ outside, room: { ...ROOM, moisture: 20 }, heating: NO_HEATING, measured: null, start: null });
  expect(Math.max(...climate.humidity)).toBe(100);
  expect(saturationPressure(20)).toBeGreaterThan(saturationPressure(5));
});

test('readings overrule the model, and the model goes on from the last of them', () => {
  const readings: Reading[] = Array.from({ length: 13 }, (_, hour) => ({ at: addMinutes(outside.origin, 600 + hour * 60), temperature: 15, humidity: hour < 6 ? 60 : null }));
  const measured = measureHours(readings, { origin: outside.origin, step: 60, count: outside.air.length });
  const climate = workshopClimate({ outside, room: ROOM, heating: NO_HEATING, measured, start: null });
  const plain = workshopClimate({ outside, room: ROOM, heating: NO_HEATING, measured: null, start: null });
  expect(climate.air.subarray(10, 22).every((t) => t === 15)).toBe(true);
  expect(Array.from(climate.isMeasured.subarray(9, 24))).toEqual([0, ...Array.from({ length: 13 }, () => 1), 0]);
  expect(climate.humidity[11]).toBe(60);
  expect(climate.air[24]).toBeLessThan(15);
  expect(climate.air[24]! - plain.air[24]!).toBeGreaterThan(5);
  expect(Math.abs(climate.air[22 + 60]! - plain.air[22 + 60]!)).toBeLessThan(0.05);
});

test('readings on a straight line become the means of their hours, and a long gap stays open', () => {
  const readings: Reading[] = [{ at: at(30), temperature: 10, humidity: null }, { at: at(150), temperature: 14, humidity: null }, { at: at(600), temperature: 20, humidity: null }];
  const { air, lastAir } = measureHours(readings, { origin: instant(0), step: 60, count: 12 });
  expect(air[0]).toBeCloseTo(10.5, 9);
  expect(air[1]).toBeCloseTo(12, 9);
  expect(air[2]).toBeCloseTo(13.5, 9);
  expect(lastAir[1]).toBeCloseTo(13, 9);
  expect(air[3]).toBeNaN();
  expect(air[10]).toBe(20);
});

test('a fit finds the time constant and offset that made the readings, to the rounding of the logger', () => {
  const series = unwrap(outsideSeries(week, { from: '2026-12-01', to: '2026-12-07' }, LONDON));
  const truth = { ...ROOM, timeConstant: 11, offset: 2.2 };
  let inside = 9;
  const readings: Reading[] = [...series.air].map((outer, hour) => {
    const goal = outer + truth.offset;
    inside = goal + (inside - goal) * Math.exp(-1 / truth.timeConstant);
    return { at: addMinutes(series.origin, (hour + 1) * 60), temperature: Math.round(inside * 10) / 10, humidity: null };
  });
  const fit = unwrap(fitRoom(readings, series));
  expect(fit.timeConstant).toBeCloseTo(11, 0);
  expect(fit.offset).toBeCloseTo(2.2, 1);
  expect(fit.error).toBeLessThan(0.04);
  expect(fit.error).toBeGreaterThan(0.01);
  expect(fit.count).toBe(readings.length);
  const gapped = readings.filter((_, index) => index < 50 || index > 90);
  expect(unwrap(fitRoom(gapped, series)).timeConstant).toBeCloseTo(11, 0);
});

test('a fit refuses too few readings, and readings that say nothing', () => {
  const few = fitRoom([{ at: outside.origin, temperature: 5, humidity: null }], outside);
  expect(few.ok ? '' : few.error[0]?.code).toBe('fit-few-readings');
  const flat: Reading[] = Array.from({ length: 60 }, (_, hour) => ({ at: addMinutes(outside.origin, hour * 60), temperature: 12, humidity: null }));
  const unclear = fitRoom(flat, outside);
  expect(unclear.ok ? '' : unclear.error[0]?.code).toBe('fit-unclear');
});

test('heating that overlaps, ends before it starts or has no fuel is refused with every reason', () => {
  const plan: HeatingPlan = {
    heater: { kilowatts: -1, kind: 'flueless burner', fuel: null, isIgnitionSafe: false },
    runs: [{ start: at(300), end: at(540), setPoint: 18 }, { start: at(180), end: at(360), setPoint: 90 }, { start: at(720), end: at(720), setPoint: 10 }],
  };
  const result = checkHeating(plan);
  expect(result.ok ? [] : result.error.map((found) => found.code)).toEqual(['heating-power', 'heating-fuel', 'heating-set-point', 'heating-overlap', 'heating-run-empty']);
  expect(checkRoom({ ...ROOM, timeConstant: 0, volume: -2 }).ok).toBe(false);
  expect(checkRoom(ROOM).ok).toBe(true);
});

import { expect, test } from 'vitest';
import { eachDate } from '@/lib/calendar';
import { NO_HEATING, outsideSeries, workshopClimate, type WorkshopClimate } from '@/lib/climate';
import { createCoatClock, forecastCoat, MATERIAL_LIBRARY } from '@/lib/cure';
import { unwrap } from '@/lib/result';
import { addMinutes } from '@/lib/units';

const WEATHER = eachDate('2026-01-01', '2026-12-31').map((date, k) => ({ date, low: 3 + 6 * Math.sin(k / 58) + (k % 3), high: 12 + 8 * Math.sin(k / 58) + (k % 5), humidity: 80 }));
const ROOM = { timeConstant: 8, heatLoss: 200, offset: 1.5, volume: 150, airChanges: 0.8, moisture: 0.05, surfaceLag: 2 };

function workshopUntil(to: string): WorkshopClimate {
  const outside = unwrap(outsideSeries(WEATHER, { from: '2026-01-01', to }, 'Europe/London'));
  return workshopClimate({ outside, room: ROOM, heating: NO_HEATING, measured: null, start: null });
}

/** Milliseconds of processor time a call, so that other work on the machine does not count. Best of five. */
function processorTime(calls: number, call: (k: number) => void): number {
  const rounds = Array.from({ length: 6 }, () => {
    const before = process.cpuUsage();
    for (let k = 0; k < calls; k += 1) call(k);
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000 / calls;
  });
  return Math.min(...rounds.slice(1));
}

test('the cure of one coat over 60 days of hourly climate takes at most 50 microseconds after set-up', () => {
  const climate = workshopUntil('2026-03-01');
  const clocks = MATERIAL_LIBRARY.map((material) => createCoatClock(climate, material));
  expect(climate.air.length).toBe(60 * 24);
  const spent = processorTime(4000, (k) => forecastCoat(clocks[k % clocks.length]!, addMinutes(climate.origin, (k * 37) % 60_000)));
  expect(spent * 1000).toBeLessThanOrEqual(50);
});

test('the climate of a year takes at most 5 milliseconds', () => {
  expect(processorTime(20, () => workshopUntil('2026-12-31'))).toBeLessThanOrEqual(5);
});

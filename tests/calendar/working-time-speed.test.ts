import { expect, test } from 'vitest';
import { addWorkingTime, createWorkingCalendar, placeInOneGo, subtractWorkingTime } from '@/lib/calendar';
import { instant, MS_PER_MINUTE } from '@/lib/units';

const at = (minutes: number) => instant(minutes * MS_PER_MINUTE);
const span = (from: number, to: number) => ({ start: at(from), end: at(to) });

test('twenty thousand questions to ten thousand sessions take well under a second of the processor', () => {
  // An hour every other hour, and a single long session at the very end: the worst case for a search from the front.
  const sessions = Array.from({ length: 9_999 }, (_, index) => span(index * 120, index * 120 + 60));
  const many = createWorkingCalendar([...sessions, span(2_000_000, 2_000_600)]);
  let wrong = 0;
  const before = process.cpuUsage();
  for (let k = 0; k < 20_000; k += 1) {
    if (placeInOneGo(many, at(k * 50), 600)?.start !== at(2_000_000)) wrong += 1;
    const end = addWorkingTime(many, at(k * 50), 50_000);
    if (end !== null) subtractWorkingTime(many, end, 50_000);
  }
  const { user, system } = process.cpuUsage(before);
  expect(wrong).toBe(0);
  expect((user + system) / 1000).toBeLessThan(1500);
});

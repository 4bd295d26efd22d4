import {
  addWorkingTime, createWorkingCalendar, dateOf, eachDate, endOfDay, expandWeeklyHours, formatDay, formatIsoWeek, formatMoment, instantOf,
  isoWeekOf, parseCivilDate, placeSplit, startOfDay, wallOf, weekdayOf,
} from '@/lib/calendar';
import { instant } from '@/lib/units';

const ZONES = ['UTC', 'Europe/London', 'America/New_York', 'Pacific/Auckland', 'Asia/Kolkata', 'America/Santiago'];

/** Answers of the whole calendar on days around clock changes, as text that must not depend on the machine's own zone. */
export function writeReport(): string {
  const dates = [...eachDate('2026-03-07', '2026-04-06'), ...eachDate('2026-09-05', '2026-11-02'), ...eachDate('2026-12-28', '2027-01-04')];
  const lines = dates.map((date) => [date, weekdayOf(date), formatIsoWeek(isoWeekOf(date)), formatDay(date), JSON.stringify(parseCivilDate(date))].join(' '));
  for (const zone of ZONES) {
    for (const date of dates) {
      const moments = ['00:00', '01:30', '02:30', '12:00', '24:00'].map((time) => instantOf(date, time, zone));
      lines.push([zone, date, startOfDay(date, zone), endOfDay(date, zone), ...moments].join(' '));
      lines.push(moments.map((at) => `${formatMoment(at, zone)} ${dateOf(at, zone)} ${JSON.stringify(wallOf(at, zone))}`).join(' '));
    }
    const hours = [{ weekday: 7, from: '00:00', to: '04:00' }, { weekday: 2, from: '18:30', to: '24:00' }] as const;
    const sessions = expandWeeklyHours(hours, { from: '2026-03-01', to: '2026-11-30' }, zone, [{ from: '2026-08-01', to: '2026-08-16' }]);
    const calendar = createWorkingCalendar(sessions);
    const from = instant(Date.UTC(2026, 2, 28, 20));
    lines.push(JSON.stringify([sessions, addWorkingTime(calendar, from, 9000), placeSplit(calendar, from, 9000)]));
  }
  return lines.join('\n');
}

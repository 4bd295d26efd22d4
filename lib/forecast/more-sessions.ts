/** Sessions after the last planned one: the odds need to know how the crew goes on. */
import type { SeriesDocument, Session } from '@/lib/build';
import { addDays, instantOf, wallOf } from '@/lib/calendar';
import { addMinutes, instant, minutesBetween, MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';

/** Weeks whose sessions are taken as the pattern. */
const PATTERN_DAYS = 28;

/**
 * The series with the sessions of its last four weeks repeated, by the clock on the wall, so many times. An assumption of forecasts, said
 * beside them; nothing is saved.
 */
export function continueSessions(document: SeriesDocument, times: number): { readonly document: SeriesDocument; readonly lastPlanned: Instant } {
  const { sessions, series: { zone } } = document;
  const lastPlanned = instant(sessions.reduce((latest, session) => Math.max(latest, session.end), 0));
  const pattern = sessions.filter((session) => session.start > lastPlanned - PATTERN_DAYS * MINUTES_PER_DAY * MS_PER_MINUTE);
  const more = Array.from({ length: times }, (_, k) => pattern.map((session): Session => {
    const wall = wallOf(session.start, zone);
    const start = instantOf(addDays(wall.date, PATTERN_DAYS * (k + 1)), wall.time, zone);
    return { ...session, id: `${session.id} again ${k + 1}`, start, end: addMinutes(start, minutesBetween(session.start, session.end)) };
  }));
  return { document: { ...document, sessions: [...sessions, ...more.flat()] }, lastPlanned };
}

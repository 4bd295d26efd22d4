import { CalendarIndex } from './calendar-index';
import type { Problem } from './problem';

/** Calendars of the problem, then those of split work without the intervals that are too short for a piece of it. */
export function compilePieces(problem: Problem): { readonly calendars: readonly CalendarIndex[]; readonly calendar: Int32Array; readonly shortest: Int32Array } {
  const calendars = problem.calendars.map((calendar) => new CalendarIndex(calendar.intervals));
  const shortest = Int32Array.from(problem.activities, (a) => (a.mode === 'split' && a.calendar !== undefined ? Math.min(a.shortestPiece ?? 0, a.duration) : 0));
  const known = new Map<string, number>();
  const calendar = Int32Array.from(problem.activities, (activity, i) => {
    if (activity.calendar === undefined) return -1;
    const own = problem.calendars.findIndex(({ id }) => id === activity.calendar);
    const least = shortest[i]!;
    const { intervals } = problem.calendars[own]!;
    if (intervals.every(({ start, end }) => end - start >= least)) return own;
    const key = `${least} ${own}`;
    const made = known.get(key) ?? calendars.push(new CalendarIndex(intervals.filter(({ start, end }) => end - start >= least))) - 1;
    known.set(key, made);
    return made;
  });
  return { calendars, calendar, shortest };
}

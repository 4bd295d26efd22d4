import { findCalendar, isInside, listDated, type Rule, type Violation } from './violation';

/** Every worked piece lies inside one interval of the activity's calendar; a milestone on one, its ends included. */
export const checkCalendarMembership: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }) => {
  const calendar = findCalendar(problem, activity.calendar);
  if (calendar === undefined) return [];
  const asked = activity.duration === 0 ? [{ start: placement.start, end: placement.start }] : placement.pieces;
  return asked
    .filter((piece) => !calendar.intervals.some((interval) => isInside(piece, interval)))
    .map((piece): Violation => ({
      rule: 'calendar',
      message: `${activity.id} is worked from ${piece.start} to ${piece.end}, outside ${calendar.id}.`,
      activities: [activity.id],
    }));
});

/** The pieces add up to the duration, and start and end are theirs. */
export const checkDuration: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }) => {
  const { end, pieces, start } = placement;
  const worked = pieces.reduce((sum, piece) => sum + piece.end - piece.start, 0);
  const found: Violation[] = [];
  if (worked !== activity.duration) {
    found.push({ rule: 'duration', message: `${activity.id} is worked ${worked} minutes instead of ${activity.duration}.`, activities: [activity.id] });
  }
  const isFramed = pieces.length === 0 ? start === end : pieces[0]?.start === start && pieces.at(-1)?.end === end;
  if (!isFramed || !Number.isInteger(start) || start < 0 || (activity.duration > 0) !== (pieces.length > 0)) {
    found.push({ rule: 'duration', message: `${activity.id} runs from ${start} to ${end}, which its pieces do not.`, activities: [activity.id] });
  }
  return found;
});

/** Work in one go, or without a calendar, has one piece. */
export const checkOneGo: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }) => {
  const isWhole = activity.mode === 'one-go' || activity.calendar === undefined;
  if (!isWhole || placement.pieces.length <= 1) return [];
  return [{ rule: 'one-go', message: `${activity.id} is to be done in one go but has ${placement.pieces.length} pieces.`, activities: [activity.id] }];
});

/** Split work pauses only where its calendar does: no calendar minute between its start and end is left out, but for intervals too short for a piece. */
export const checkSplitPieces: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }) => {
  const calendar = findCalendar(problem, activity.calendar);
  if (calendar === undefined || activity.mode !== 'split' || activity.duration === 0) return [];
  const { end, pieces, start } = placement;
  const least = Math.min(activity.shortestPiece ?? 0, activity.duration);
  const expected = calendar.intervals
    .filter((interval) => interval.end - interval.start >= least)
    .map((interval) => ({ start: Math.max(start, interval.start), end: Math.min(end, interval.end) }))
    .filter((piece) => piece.start < piece.end);
  const isSame = expected.length === pieces.length
    && expected.every((piece, k) => piece.start === pieces[k]?.start && piece.end === pieces[k]?.end);
  if (isSame) return [];
  return [{ rule: 'split-pieces', message: `${activity.id} does not go on at once in the next interval of ${calendar.id}.`, activities: [activity.id] }];
});

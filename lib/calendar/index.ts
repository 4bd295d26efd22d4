/** Dates, weeks, zones, intervals and working time. Knows instants, and nothing of any trade. */
export {
  addDays, compareDates, dateOfDayNumber, dayNumberOf, daysBetween, daysInMonth, eachDate, isCivilDate, parseCivilDate, weekdayOf,
} from './civil';
export type { CivilDate, Weekday } from './civil';
export { formatClock, formatDay, formatLength, formatMoment, formatWorkLength } from './format';
export {
  containsInterval, containsPoint, findFirstEndingAfter, intersectIntervals, isSortedDisjoint, mergeOverlapping,
  mergeOverlappingAndTouching, subtractIntervals, totalLength, unionIntervals,
} from './intervals';
export type { InstantInterval, Interval } from './intervals';
export { formatIsoWeek, isoWeekOf, mondayOf, nextWeek, parseIsoWeek, previousWeek, weekDates, weeksInIsoYear } from './iso-week';
export type { IsoWeek } from './iso-week';
export { minuteOfDay, parseWallTime, wallTimeOfMinute } from './wall-time';
export type { WallTime } from './wall-time';
export { checkWeeklyHours, expandWeeklyHours } from './weekly-hours';
export type { CivilSpan, WeeklyHours } from './weekly-hours';
export {
  addWorkingTime, createWorkingCalendar, placeInOneGo, placeSplit, subtractWorkingTime, workingMinutesBetween,
} from './working-time';
export type { WorkingCalendar } from './working-time';
export { dateOf, endOfDay, instantOf, offsetMinutes, startOfDay, wallOf } from './zone';
export type { WallMoment } from './zone';
export { isZone, listZones, parseZone } from './zone-name';

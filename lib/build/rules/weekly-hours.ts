import { checkWeeklyHours } from '@/lib/calendar';
import type { Issue } from '@/lib/result';
import type { Person, Trade, WeeklyHours } from '../model';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

function checkHours(record: Person | Trade, field: string, hours: readonly WeeklyHours[]): readonly Issue[] {
  const checked = checkWeeklyHours(hours);
  if (checked.ok) return [];
  return checked.error.map((found) => ({
    ...found, message: `${startWith(record)}: ${found.message}`, path: [field, ...found.path], subjects: subjectsOf(record),
  }));
}

/** Hours of people and trades are wall times, each row ending after it starts. */
export const checkHoursOfWeek: Rule = (document) => [
  ...document.people.flatMap((person) => checkHours(person, 'hours', person.hours)),
  ...document.trades.flatMap((trade) => checkHours(trade, 'openHours', trade.openHours)),
];

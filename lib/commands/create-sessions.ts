import { addDays, eachDate, instantOf, minuteOfDay, weekdayOf } from '@/lib/calendar';
import { createRecords, type SeriesDocument, type Session } from '@/lib/build';
import { fail, issue, ok, type Result } from '@/lib/result';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { loadDocument, saveEdited } from './save-edited';
import type { CreatedMany } from './apply-many';
import { splitMessage, civilDate, celsiusValue, flag, idsOf, nameOf, numberOf, orNull, say, wallTime, weekday } from './schemas/values';

const DAYS_PER_WEEK = 7;
const MOST_WEEKS = 53;

/** Sessions that repeat: on these weekdays, between these times on the clock, for so many weeks. */
const repeatSchema = z.strictObject({
  name: nameOf('The session'),
  startOn: civilDate,
  weeks: numberOf({ unit: 'weeks', min: 1, max: MOST_WEEKS, isWhole: true }),
  weekdays: z.array(weekday).min(1, say('No day of the week is chosen.', 'Choose at least one day.')).transform((days) => new Set(days)),
  from: wallTime('start'),
  to: wallTime('end'),
  placeIds: idsOf('place'),
  crewIds: idsOf('person'),
  isRecording: flag,
  hasDaylight: flag,
  isNoiseAllowed: flag,
  heating: orNull(celsiusValue).default(null),
});

type Repeat = z.output<typeof repeatSchema>;

function readRepeat(input: unknown): Result<Repeat> {
  const parsed = repeatSchema.safeParse(input);
  if (!parsed.success) {
    return fail(parsed.error.issues.map((found) => {
      const { problem, fix } = splitMessage(found.message);
      return issue('input-value', problem, fix, { path: found.path.filter((step) => typeof step !== 'symbol') });
    }));
  }
  const { from, to } = parsed.data;
  if (minuteOfDay(from) < minuteOfDay(to)) return ok(parsed.data);
  return fail([issue('session-ends-before-start', `The sessions end at ${to}, not after their start at ${from}.`, `Choose an end after ${from}, at most 24:00.`, { path: ['to'] })]);
}

/** One session a chosen day. Times are those on the clock of the series, summer and winter; who is away that day is left out. */
function layOut(document: SeriesDocument, repeat: Repeat, newId: () => string): readonly Session[] {
  const { name, startOn, weeks, weekdays, from, to, crewIds, ...rest } = repeat;
  const { zone } = document.series;
  const isAway = (id: string, date: string): boolean =>
    document.people.some((person) => person.id === id && person.away.some((span) => span.from <= date && date <= span.to));
  return eachDate(startOn, addDays(startOn, weeks * DAYS_PER_WEEK - 1)).filter((date) => weekdays.has(weekdayOf(date))).map((date) => ({
    kind: 'session', id: newId(), revision: 1, order: 0, name, start: instantOf(date, from, zone), end: instantOf(date, to, zone),
    crewIds: crewIds.filter((id) => !isAway(id, date)), ...rest,
  }));
}

/**
 * Makes sessions that repeat weekly, in one change. The first week starts on `startOn`.
 * Fails with the issues of the form and of the rules, such as a person in two sessions at once.
 */
export async function createSessions(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<CreatedMany>> {
  const repeat = readRepeat(input);
  if (!repeat.ok) return repeat;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const sessions = layOut(loaded.value, repeat.value, context.newId);
  const label = `Added ${sessions.length} ${sessions.length === 1 ? 'session' : 'sessions'} ${repeat.value.name}`;
  const saved = await saveEdited(context, loaded.value, createRecords(loaded.value, sessions, label));
  return saved.ok ? ok({ ...saved.value, ids: sessions.map(({ id }) => id) }) : saved;
}

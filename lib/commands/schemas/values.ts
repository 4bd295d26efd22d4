/** The kinds of value that forms are made of. Well-formedness only: what makes sense together is for the rules of the build. */
import { instantOf, isCivilDate, parseCivilDate, parseWallTime, wallOf } from '@/lib/calendar';
import { describeBadName, EARLIEST_DATE, LATEST_DATE, type WorkRef } from '@/lib/build';
import type { Issue } from '@/lib/result';
import { celsius, instant, minutes } from '@/lib/units';
import { z } from 'zod';

const LONGEST_NOTE = 5000;
const LONGEST_LIST = 200;
const LONGEST_ID = 64;
/** Nineteen years in minutes: beyond it a number is a slip of the keyboard. */
const LARGEST_NUMBER = 10_000_000;

/** Problem and fix in one text, since a zod message is one text. {@link splitMessage} takes it apart. */
const MARK = '\n';
export const say = (problem: string, fix: string): string => `${problem}${MARK}${fix}`;

/** @example splitMessage(say('It is empty.', 'Type a name.')) // { problem: 'It is empty.', fix: 'Type a name.' } */
export function splitMessage(message: string): { readonly problem: string; readonly fix: string } {
  const [problem = '', fix = 'Type it again.'] = message.split(MARK);
  return { problem, fix };
}

function sayFirst(issues: readonly Issue[], otherwise: string): string {
  const [first] = issues;
  return first === undefined ? otherwise : say(first.message, first.fix);
}

/** 1 to 200 characters, trimmed. `what` starts the message: `The task`. */
export function nameOf(what: string) {
  return z.string({ error: say(`${what} has no name.`, 'Type a name.') }).trim().superRefine((name, context) => {
    const bad = describeBadName(name, what);
    if (bad !== null) context.addIssue({ code: 'custom', message: say(bad.message, bad.fix), input: name });
  });
}

/** Trimmed text of any length up to the limit; empty when left out. */
export function textOf(limit = LONGEST_NOTE) {
  return z.string({ error: say('This is not a text.', 'Type some words, or nothing.') }).trim()
    .superRefine((text, context) => {
      if (text.length <= limit) return;
      const message = say(`This text has ${text.length} characters; at most ${limit} fit.`, `Shorten it by ${text.length - limit}.`);
      context.addIssue({ code: 'custom', message, input: text });
    }).default('');
}

/** One word or a few, never empty: a skill, a thing to lay out. */
export const phrase = textOf(200).refine((text) => text !== '', { error: say('This line is empty.', 'Type something, or take the line out.') });

interface NumberRange {
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  readonly isWhole?: boolean;
}

/** A finite number; form fields send text, so text that is one number will do. */
export function numberOf({ unit, min = -LARGEST_NUMBER, max = LARGEST_NUMBER, isWhole = false }: NumberRange) {
  const what = `a ${isWhole ? 'whole ' : ''}number${unit === '' ? '' : ` of ${unit}`}`;
  const fix = `Type ${what}${min === -LARGEST_NUMBER ? '' : ` from ${min}`}${max === LARGEST_NUMBER ? '' : ` to ${max}`}.`;
  return z.preprocess(
    (value) => (typeof value === 'string' && value.trim() !== '' ? Number(value.trim()) : value),
    z.number({ error: say(`This is not ${what}.`, fix) }).superRefine((value, context) => {
      const isRight = Number.isFinite(value) && value >= min && value <= max && (!isWhole || Number.isInteger(value));
      if (!isRight) context.addIssue({ code: 'custom', message: say(`${value} is not ${what} that can be used here.`, fix), input: value });
    }),
  );
}

export const minutesValue = numberOf({ unit: 'minutes' }).transform(minutes);
export const celsiusValue = numberOf({ unit: 'degrees Celsius', min: -60, max: 400 }).transform(celsius);
export const kelvinsNumber = numberOf({ unit: 'kelvins', min: -1000, max: 1000 });
export const wholeNumber = (unit: string) => numberOf({ unit, isWhole: true });

/** null where a form leaves the field empty. */
export function orNull<T extends z.ZodType>(schema: T) {
  return z.preprocess((value) => (value === '' || value === undefined ? null : value), schema.nullable());
}

/** A switch; a form sends a missing one as false. */
export const flag = z.boolean({ error: say('This is neither yes nor no.', 'Tick the box, or leave it empty.') }).default(false);

/** The id of another record. `what` names its kind. */
export function idOf(what: string) {
  return z.string({ error: say(`No ${what} is chosen.`, `Choose a ${what}.`) }).trim()
    .min(1, say(`No ${what} is chosen.`, `Choose a ${what}.`)).max(LONGEST_ID, say(`This ${what} does not exist.`, `Choose a ${what}.`));
}

/** What a form has to know about its series. */
export interface FormSetting {
  /** Local times are read in it. */
  readonly zone: string;
  /** Ids for new lines inside a record: states, shots, coats. */
  readonly newId: () => string;
}

/** The id of a line inside a record; a new line, whose id is empty or left out, gets one. */
export function lineId({ newId }: FormSetting) {
  return z.string().trim().max(LONGEST_ID, say('This line has an id that is too long.', 'Take the line out and add it again.'))
    .default('').transform((id) => (id === '' ? newId() : id));
}

/** At most 200 entries; empty when left out. */
export function listOf<T extends z.ZodType>(entry: T) {
  return z.array(entry, { error: say('This is not a list.', 'Load the page again.') })
    .max(LONGEST_LIST, say(`This list has more than ${LONGEST_LIST} entries.`, `Keep at most ${LONGEST_LIST}.`)).default([]);
}

/** Ids, each once; one that comes twice is taken once. */
export function idsOf(what: string) {
  return listOf(idOf(what)).transform((ids) => [...new Set(ids)]);
}

/** Phrases, each once. */
export const phrases = listOf(phrase).transform((lines) => [...new Set(lines)]);

/** `2026-12-01`. */
export const civilDate = z.string({ error: say('This is not a date.', 'Write the date as 2026-12-01.') }).trim().superRefine((text, context) => {
  const parsed = parseCivilDate(text);
  if (!parsed.ok) context.addIssue({ code: 'custom', message: sayFirst(parsed.error, 'This is not a date.'), input: text });
  else if (text < EARLIEST_DATE || text > LATEST_DATE) {
    context.addIssue({ code: 'custom', message: say(`No build reaches the date ${text}.`, `Choose a date from ${EARLIEST_DATE} to ${LATEST_DATE}.`), input: text });
  }
});

/** `18:30`; `24:00` only as an end. */
export function wallTime(as: 'start' | 'end') {
  return z.string({ error: say('This is not a time of day.', 'Write hours and minutes like 18:30.') }).trim().superRefine((text, context) => {
    const parsed = parseWallTime(text, as);
    if (!parsed.ok) context.addIssue({ code: 'custom', message: sayFirst(parsed.error, 'This is not a time of day.'), input: text });
  });
}

export const weekday = z.literal([1, 2, 3, 4, 5, 6, 7], { error: say('This is not a day of the week.', 'Choose Monday to Sunday, 1 to 7.') });

export const weeklyHours = listOf(z.strictObject({ weekday, from: wallTime('start'), to: wallTime('end') }));
export const dateSpans = listOf(z.strictObject({ from: civilDate, to: civilDate, why: textOf(200) }));

const LOCAL = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})(?::00(?:\.0+)?)?$/;
/** Between these lie the moments of a build. */
const [EARLIEST, LATEST] = [Date.parse(EARLIEST_DATE), Date.parse(LATEST_DATE)];

/** Milliseconds of a local date and time; undefined when it is none, or one that the clock skips. */
function readLocal(text: string, zone: string): number | undefined {
  const [, date = '', time = ''] = LOCAL.exec(text.trim()) ?? [];
  if (!isCivilDate(date) || !parseWallTime(time).ok) return undefined;
  const at = instantOf(date, time, zone);
  const wall = wallOf(at, zone);
  return wall.date === date && wall.time === time ? at : undefined;
}

/**
 * A moment: milliseconds since 1970, or `2026-12-01T18:30` as a date-and-time field sends it, read in the zone.
 * A local time that the clock skips in spring is refused; one that comes twice in autumn is the first.
 */
export function momentIn({ zone }: FormSetting) {
  const message = say('This is not a date and time that exists here.', 'Choose a day and a time like 2026-12-01 18:30.');
  return z.preprocess(
    (value) => (typeof value === 'string' ? readLocal(value, zone) : value),
    z.number({ error: message }).int(message).min(EARLIEST, message).max(LATEST, message).transform(instant),
  );
}

/** Three lengths of time from the smallest to the largest. */
export const threeMinutes = z.strictObject({ low: minutesValue, likely: minutesValue, high: minutesValue });

/** What a task or outside job does to a part; the empty state is null. */
export const partUses = listOf(z.strictObject({
  partId: idOf('part'), from: orNull(idOf('state')).default(null), to: orNull(idOf('state')).default(null),
}));

export const workRef: z.ZodType<WorkRef> = z.strictObject({
  kind: z.literal(['task', 'outsideJob'], { error: say('This is neither a task nor an outside job.', 'Choose a task or an outside job.') }),
  id: idOf('task or outside job'),
});

/** One of a few words. */
export function oneOf<const T extends readonly string[]>(words: T) {
  return z.enum(words, { error: say('This is not one of the choices.', `Choose one of: ${words.join(', ')}.`) });
}

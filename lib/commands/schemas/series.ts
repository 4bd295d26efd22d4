import { PLAN_GOALS } from '@/lib/build';
import { parseZone } from '@/lib/calendar';
import { USUAL_MINIMUM, USUAL_TITLES } from '@/lib/episodes';
import { z } from 'zod';
import { workshopSchema } from './cure';
import { cameraSchema, filmingSchema } from './kit';
import { celsiusValue, civilDate, flag, nameOf, numberOf, say, textOf, wholeNumber } from './values';

/** Every goal once. */
const goalOrder = z.array(z.enum(PLAN_GOALS)).refine(
  (goals) => goals.length === PLAN_GOALS.length && new Set(goals).size === goals.length,
  { error: say('The order of goals leaves one out or names one twice.', 'Name each goal once.') },
);

/** What a person fills in about a series. */
export const seriesSchema = z.strictObject({
  name: nameOf('The series'),
  zone: z.string({ error: say('No time zone is chosen.', 'Write area and city, such as Europe/London.') }).transform((text, context) => {
    const parsed = parseZone(text);
    if (parsed.ok) return parsed.value;
    const [first] = parsed.error;
    context.addIssue({ code: 'custom', message: say(first?.message ?? 'There is no such time zone.', first?.fix ?? 'Write Europe/London.'), input: text });
    return z.NEVER;
  }),
  cadenceDays: wholeNumber('days'),
  leadDays: wholeNumber('days'),
  fillLimit: numberOf({ unit: '', min: -10, max: 10 }),
  workshopTemperature: celsiusValue,
  runtime: z.strictObject({ target: numberOf({ unit: 'minutes' }), min: numberOf({ unit: 'minutes' }), max: numberOf({ unit: 'minutes' }) }),
  frameRate: z.strictObject({ numerator: wholeNumber('frames'), denominator: wholeNumber('seconds') }),
  titles: numberOf({ unit: 'minutes', min: 0, max: 60 }).default(USUAL_TITLES),
  bankMinimum: numberOf({ unit: 'episodes', min: 0, max: 52, isWhole: true }).default(USUAL_MINIMUM),
  usesExperience: flag,
  frozenDays: numberOf({ unit: 'days', min: 0, max: 60, isWhole: true }).default(0),
  goals: goalOrder.optional(),
  filming: filmingSchema,
  camera: cameraSchema,
  workshop: workshopSchema.optional(),
  sourceReadings: z.array(z.strictObject({ text: textOf(1000), on: civilDate, by: textOf(200) })).optional(),
});

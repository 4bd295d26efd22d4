/** What a person fills in about the terms of a trade and the process of a job. */
import { z } from 'zod';
import { flag, listOf, momentIn, numberOf, orNull, phrase, phrases, textOf, weekday, type FormSetting } from './values';

const weekdays = listOf(weekday).transform((days) => [...new Set(days)].toSorted((a, b) => a - b));
const millimetres = orNull(numberOf({ unit: 'mm', min: 0, max: 100_000 })).default(null);

export const termsSchema = z.strictObject({
  batchDays: weekdays,
  collectionDays: weekdays,
  minimum: z.strictObject({ amount: orNull(numberOf({ unit: '', min: 0 })).default(null), unit: textOf(40) }),
  country: textOf(60).nullable().transform((text) => text ?? ''),
  region: textOf(60),
  preparations: phrases,
  returnWindow: z.strictObject({ hours: orNull(numberOf({ unit: 'hours', min: 0 })).default(null), afterwards: textOf(400) }),
});

export const processSchema = (setting: FormSetting) => z.strictObject({
  preparations: listOf(z.strictObject({ name: phrase, doneAt: orNull(momentIn(setting)).default(null) })),
  amount: orNull(numberOf({ unit: '', min: 0 })).default(null),
  treatedAt: orNull(momentIn(setting)).default(null),
  readyAt: orNull(momentIn(setting)).default(null),
  isQuenched: flag,
  vents: z.strictObject({ width: millimetres, height: millimetres, diameter: millimetres, isDrilledAfter: flag }),
});

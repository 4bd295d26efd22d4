import { z } from 'zod';
import { NO_VAPOUR } from '@/lib/build';
import { celsiusValue, civilDate, flag, kelvinsNumber, minutesValue, nameOf, numberOf, oneOf, orNull, textOf } from './values';
import { cureSchema } from './cure';

/** What a person fills in about a material. Times in minutes at the reference temperature. */
export const materialSchema = z.strictObject({
  name: nameOf('The material'),
  sort: oneOf(['primer', 'paint', 'filler', 'sealer', 'adhesive', 'thread locker', 'powder', 'galvanizing wash', 'release', 'other']),
  stages: z.strictObject({
    touchDry: minutesValue, recoatFrom: minutesValue, recoatUntil: orNull(minutesValue).default(null), handle: minutesValue, fullCure: minutesValue,
  }),
  referenceTemperature: celsiusValue,
  minimumTemperature: celsiusValue,
  doublingPer: kelvinsNumber,
  potLife: orNull(minutesValue).default(null),
  hasSolvent: flag,
  hasIsocyanate: flag,
  vapour: z.strictObject({
    density: orNull(numberOf({ unit: 'kg/l', min: 0.3, max: 3 })).default(null),
    molarMass: orNull(numberOf({ unit: 'g/mol', min: 10, max: 1000 })).default(null),
    solventShare: orNull(numberOf({ unit: '', min: 0, max: 1 })).default(null),
    limit: orNull(numberOf({ unit: 'ppm', min: 0.0001, max: 10_000 })).default(null),
    source: textOf(500),
  }).default(NO_VAPOUR),
  source: textOf(),
  cure: cureSchema.optional(),
  usableUntil: orNull(civilDate).optional().transform((date) => date ?? undefined),
});

import { z } from 'zod';
import { cureSchema } from './cure';
import { celsiusValue, flag, kelvinsNumber, minutesValue, nameOf, oneOf, orNull, textOf } from './values';

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
  source: textOf(),
  cure: cureSchema.optional(),
});

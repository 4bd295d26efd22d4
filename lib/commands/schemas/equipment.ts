import { z } from 'zod';
import { NO_TOOL_EXPOSURE } from '@/lib/build';
import { nameOf, numberOf, orNull, textOf, wholeNumber } from './values';

/** What a person fills in about a piece of equipment. */
export const equipmentSchema = z.strictObject({
  name: nameOf('The piece of equipment'), count: wholeNumber('pieces'),
  exposure: z.strictObject({
    noise: orNull(numberOf({ unit: 'dB(A)', min: 0, max: 150 })).default(null),
    vibration: orNull(numberOf({ unit: 'm/s²', min: 0, max: 100 })).default(null),
    source: textOf(500),
  }).default(NO_TOOL_EXPOSURE),
});

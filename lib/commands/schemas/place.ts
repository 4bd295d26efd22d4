import { z } from 'zod';
import { NO_ROOM_AIR } from '@/lib/build';
import { nameOf, numberOf, orNull, textOf, wholeNumber } from './values';

/** What a person fills in about a place. */
export const placeSchema = z.strictObject({
  name: nameOf('The place'), capacity: wholeNumber('tasks'), airZone: textOf(200),
  air: z.strictObject({
    volume: orNull(numberOf({ unit: 'cubic metres', min: 1, max: 100_000 })).default(null),
    airChanges: orNull(numberOf({ unit: 'air changes an hour', min: 0, max: 600 })).default(null),
    source: textOf(500),
  }).default(NO_ROOM_AIR),
});

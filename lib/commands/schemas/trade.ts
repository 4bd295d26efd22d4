import { z } from 'zod';
import { termsSchema } from './outwork';
import { dateSpans, minutesValue, nameOf, textOf, weeklyHours } from './values';

/** What a person fills in about an outside trade. */
export const tradeSchema = z.strictObject({
  name: nameOf('The outside trade'), craft: textOf(200), openHours: weeklyHours, closed: dateSpans, trip: minutesValue, contact: textOf(),
  terms: termsSchema.optional(),
});

import { z } from 'zod';
import { civilDate, dateSpans, nameOf, orNull, phrases, weeklyHours } from './values';

/** A form sends the group empty while nobody has been asked. */
const consent = z.strictObject({ agreedOn: orNull(civilDate).default(null), until: orNull(civilDate).default(null) })
  .optional().transform((given) => (given === undefined || given.agreedOn === null ? undefined : given));

/** What a person fills in about a member of the crew. */
export const personSchema = z.strictObject({ name: nameOf('The person'), skills: phrases, hours: weeklyHours, away: dateSpans, consent });

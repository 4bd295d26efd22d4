import { z } from 'zod';
import { civilDate, dateSpans, nameOf, orNull, phrases, textOf, weeklyHours } from './values';

const consent = z.strictObject({ givenOn: orNull(civilDate).default(null), until: orNull(civilDate).default(null), where: textOf(500) });

/** What a person fills in about a member of the crew. */
export const personSchema = z.strictObject({ name: nameOf('The person'), skills: phrases, hours: weeklyHours, away: dateSpans, consent: consent.optional() });

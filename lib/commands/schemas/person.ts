import { z } from 'zod';
import { dateSpans, nameOf, phrases, weeklyHours } from './values';

/** What a person fills in about a member of the crew. */
export const personSchema = z.strictObject({ name: nameOf('The person'), skills: phrases, hours: weeklyHours, away: dateSpans });

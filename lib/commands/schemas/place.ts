import { z } from 'zod';
import { nameOf, textOf, wholeNumber } from './values';

/** What a person fills in about a place. */
export const placeSchema = z.strictObject({ name: nameOf('The place'), capacity: wholeNumber('tasks'), airZone: textOf(200) });

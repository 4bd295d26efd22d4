import { z } from 'zod';
import { nameOf, wholeNumber } from './values';

/** What a person fills in about a piece of equipment. */
export const equipmentSchema = z.strictObject({ name: nameOf('The piece of equipment'), count: wholeNumber('pieces') });

import { z } from 'zod';
import { flag, nameOf, numberOf, wholeNumber } from './values';

/** What a person fills in about a camera. */
export const cameraSchema = z.strictObject({
  name: nameOf('The camera'),
  rate: z.strictObject({ numerator: wholeNumber('frames'), denominator: wholeNumber('seconds') }),
  isDropFrame: flag,
  clockOffset: numberOf({ unit: 'seconds', min: -100_000_000, max: 100_000_000 }).default(0),
});

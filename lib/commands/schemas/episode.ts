import { z } from 'zod';
import { civilDate, flag, nameOf, numberOf, oneOf, orNull, textOf } from './values';

const day = orNull(civilDate).default(null);
const checks = z.strictObject({
  captions: z.strictObject({ file: textOf(300), readOn: day }),
  flashes: z.strictObject({ perSecond: orNull(numberOf({ unit: 'flashes a second', min: 0, max: 120, isWhole: true })).default(null), remedy: textOf(500), countedOn: day }),
});

/** What a person fills in about an episode. */
export const episodeSchema = z.strictObject({
  name: nameOf('The episode'), releaseDate: civilDate, isEvergreen: flag,
  status: oneOf(['planned', 'recorded', 'cut', 'cleared', 'released']).default('planned'),
  checks: checks.optional(),
});

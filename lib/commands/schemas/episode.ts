import { z } from 'zod';
import { civilDate, flag, nameOf, oneOf } from './values';

/** What a person fills in about an episode. */
export const episodeSchema = z.strictObject({
  name: nameOf('The episode'), releaseDate: civilDate, isEvergreen: flag,
  status: oneOf(['planned', 'recorded', 'cut', 'cleared', 'released']).default('planned'),
});

import { z } from 'zod';
import { civilDate, flag, idOf, idsOf, nameOf, numberOf, oneOf, orNull, textOf } from './values';

const share = numberOf({ unit: '' }).default(0);

/** What a person fills in about a segment. */
export const segmentSchema = z.strictObject({
  name: nameOf('The segment'),
  episodeId: orNull(idOf('episode')).default(null),
  role: oneOf(['opening', 'work', 'teaching', 'trouble', 'result', 'talk', 'sponsor', 'closing']).default('work'),
  length: numberOf({ unit: 'minutes' }),
  isResult: flag,
  hook: share,
  hang: share,
  thread: textOf(200),
  isEvergreen: flag,
  isFlashback: flag,
  storyDate: orNull(civilDate).default(null),
  ending: oneOf(['free', 'ends the episode', 'never ends it']).default('free'),
  taskIds: idsOf('task'),
  cutStart: orNull(numberOf({ unit: 'seconds', min: 0, max: 86_400 })).optional().transform((seconds) => seconds ?? undefined),
});

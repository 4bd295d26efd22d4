import { z } from 'zod';
import { idOf, nameOf, oneOf, orNull, textOf } from './values';

const episode = orNull(idOf('episode')).default(null);

/** What a person fills in about a promise made on camera. */
export const promiseSchema = z.strictObject({
  name: nameOf('The promise'), saidInId: episode, where: textOf(200), dueId: episode,
  closure: oneOf(['open', 'kept', 'replaced', 'withdrawn on screen']).default('open'), reason: textOf(), closedInId: episode,
});

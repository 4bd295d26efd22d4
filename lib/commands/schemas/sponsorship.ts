import { z } from 'zod';
import { civilDate, flag, idOf, nameOf, numberOf, oneOf, orNull, textOf } from './values';

const seconds = orNull(numberOf({ unit: 'seconds' })).default(null);

/** What a person fills in about what is owed to a sponsor. */
export const sponsorshipSchema = z.strictObject({
  name: nameOf('The obligation'),
  sponsor: nameOf('The sponsor'),
  what: textOf(),
  exclusiveIn: textOf(200),
  episodeId: orNull(idOf('episode')).default(null),
  part: oneOf(['anywhere', 'first third', 'second third', 'last third']).default('anywhere'),
  dueDate: orNull(civilDate).default(null),
  minimumSeconds: numberOf({ unit: 'seconds' }).default(0),
  spotStart: seconds,
  spotEnd: seconds,
  disclosureText: textOf(200),
  spokenAt: seconds,
  shownFrom: seconds,
  shownUntil: seconds,
  needsApproval: flag,
  approvedOn: orNull(civilDate).default(null),
});

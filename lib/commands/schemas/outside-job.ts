import { z } from 'zod';
import { processSchema } from './outwork';
import { civilDate, idOf, momentIn, nameOf, numberOf, orNull, partUses, wholeNumber, type FormSetting } from './values';

const days = numberOf({ unit: 'working days' });

/** What a person fills in about an outside job. Local times are read in the zone of the series. */
export const outsideJobSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The outside job'),
  tradeId: idOf('trade'),
  episodeId: orNull(idOf('episode')).default(null),
  parts: partUses,
  quote: z.strictObject({ low: days, likely: days, high: days }),
  crew: wholeNumber('people'),
  droppedOffAt: orNull(momentIn(setting)).default(null),
  promisedFor: orNull(civilDate).default(null),
  collectedAt: orNull(momentIn(setting)).default(null),
  process: processSchema(setting).optional(),
});

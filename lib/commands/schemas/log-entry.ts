/** What a device sends about one entry of the log. Well-formedness only; what cannot be understood in it is kept as words. */
import { LOG_KINDS } from '@/lib/footage';
import { z } from 'zod';
import { flag, numberOf, oneOf, orNull, say, textOf } from './values';

/** Milliseconds since 1970 by the device's clock, however wrong that is. */
const deviceMoment = numberOf({ unit: 'milliseconds', min: -8.64e15, max: 8.64e15, isWhole: true });
const reference = orNull(z.string().trim().max(64)).default(null);
const word = textOf(200);

const take = z.strictObject({
  cameraId: reference,
  /** Labels as read from the camera; empty: not read. */
  start: word, end: word,
  /** Left out: counted on from the last take of the same shot. */
  number: orNull(numberOf({ unit: '', min: 1, max: 100_000, isWhole: true })).default(null),
  size: orNull(oneOf(['wide', 'medium', 'close'])).default(null),
  verdict: oneOf(['good', 'no good', 'unsure']).default('unsure'),
  media: word, isReenacted: flag, reenactmentLabel: word, isFailedAttempt: flag,
});

const observation = z.strictObject({
  partId: z.string().trim().min(1).max(64), stateId: reference,
  whereabouts: z.strictObject({ kind: oneOf(['place', 'trade', 'store']), id: reference }).nullable().default(null),
});

export const logEntrySchema = z.strictObject({
  id: z.string({ error: say('The entry has no id.', 'Load the page again.') }).trim().min(8, say('The id of the entry is too short.', 'Load the page again.')).max(64, say('The id of the entry is too long.', 'Load the page again.')),
  kind: oneOf(LOG_KINDS),
  deviceAt: deviceMoment,
  sentAt: deviceMoment,
  device: word, author: word, taskId: reference, shotId: reference, text: textOf(),
  take: take.nullable().default(null),
  observed: z.array(observation).max(50).default([]),
  look: z.strictObject({ clothes: word, equipment: word, light: word, whiteBalance: word, lens: word, tools: word }).nullable().default(null),
  departure: z.strictObject({ manualValue: word, ownValue: word, reason: textOf(1000), warning: textOf(1000), isSpoken: flag, isCaptioned: flag }).nullable().default(null),
  card: z.strictObject({ card: word, what: oneOf(['copied', 'copy verified', 'reformatted']) }).nullable().default(null),
  waiver: z.strictObject({ check: numberOf({ unit: '', min: 1, max: 40, isWhole: true }), key: z.string().min(1).max(500) }).nullable().default(null),
  supersedes: reference,
  isWithdrawn: flag,
});

export type SentEntry = z.output<typeof logEntrySchema>;
export type SentTake = NonNullable<SentEntry['take']>;

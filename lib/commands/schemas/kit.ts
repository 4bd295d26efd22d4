/** How a series films and with what: the values of common practice, and the ranges that make sense. */
import { checkKit, USUAL_KIT } from '@/lib/episodes';
import { checkFilmingTimes, COMMON_PRACTICE } from '@/lib/estimate';
import type { Result } from '@/lib/result';
import { z } from 'zod';
import { listOf, numberOf, oneOf, say, wholeNumber } from './values';

/** Every way to film. */
export const COVERAGES = ['none', 'locked-off', 'moved camera', 'inserts and teaching', 'piece to camera', 'time-lapse', 'montage'] as const;

/** Hands the issues of a rule of the domain to the form, each at its field. */
function judgedBy<T>(check: (value: T) => Result<T>) {
  return (value: T, context: z.RefinementCtx): void => {
    const judged = check(value);
    if (judged.ok) return;
    for (const { message, fix, path } of judged.error) context.addIssue({ code: 'custom', message: say(message, fix), path: [...path], input: value });
  };
}

const count = numberOf({ unit: '', min: 0, max: 100 });
const length = numberOf({ unit: 'minutes' });

export const filmingSchema = z.strictObject({
  position: length, shot: length, take: length, reset: length, retakeChance: numberOf({ unit: '' }), oneWay: length, packUp: length,
  own: listOf(z.strictObject({ coverage: oneOf(COVERAGES), positions: count, positionsPerHour: count, shots: count, shotsPerHour: count })),
}).superRefine(judgedBy(checkFilmingTimes)).default({ ...COMMON_PRACTICE.times, own: [] });

export const cameraSchema = z.strictObject({
  cameras: wholeNumber('cameras'), bitRate: numberOf({ unit: 'Mb/s' }), cards: listOf(numberOf({ unit: 'GB' })),
  batteries: wholeNumber('batteries'), batteryMinutes: length, fillLimit: numberOf({ unit: '' }),
}).superRefine(judgedBy(checkKit)).default(() => ({ ...USUAL_KIT, cards: [...USUAL_KIT.cards] }));

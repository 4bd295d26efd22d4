import { minutes } from '@/lib/units';
import { z } from 'zod';
import { minutesValue, nameOf, oneOf, orNull, workRef } from './values';

/** What a person fills in about a link. */
export const linkSchema = z.strictObject({
  name: nameOf('The link'),
  from: workRef,
  to: workRef,
  stage: orNull(oneOf(['touchDry', 'recoatFrom', 'handle', 'fullCure'])).default(null),
  minWait: minutesValue.default(minutes(0)),
  maxWait: orNull(minutesValue).default(null),
  clock: oneOf(['elapsed', 'working']).default('elapsed'),
});

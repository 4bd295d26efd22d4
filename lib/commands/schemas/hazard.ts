import { isHazardFact, type HazardFact } from '@/lib/build';
import { z } from 'zod';
import { civilDate, flag, lineId, listOf, nameOf, oneOf, orNull, say, textOf, type FormSetting } from './values';

/** A fact out of the closed list. */
export const hazardFact = z.custom<HazardFact>((value) => typeof value === 'string' && isHazardFact(value), {
  error: say('This is no hazard fact that a task can have.', 'Choose facts from the list.'),
});

const status = oneOf(['read', 'memory', 'computed', 'judgement', 'practice']);
const trigger = listOf(listOf(hazardFact));

/** A form says “always” with a tick of its own; a deferral with nothing in it is none. */
const deferral = z.strictObject({ text: textOf(500), when: z.union([z.literal('always'), trigger]).default([]), isAlways: flag.optional() })
  .transform(({ text, when, isAlways }) => (text === '' && isAlways !== true && when.length === 0 ? null : { text, when: isAlways === true ? ('always' as const) : when }));

/** What a person fills in, or brings in, about a hazard. What makes it complete is for the rules of safety. */
export const hazardSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The hazard'),
  severity: oneOf(['I', 'II', 'III', 'IV']),
  trigger,
  controls: listOf(z.strictObject({ id: lineId(setting), level: oneOf(['eliminate', 'substitute', 'engineer', 'administer']), text: textOf(500), isShown: flag })),
  equipment: listOf(z.strictObject({
    id: lineId(setting), text: textOf(200), sign: orNull(textOf(8)).default(null), standard: textOf(200), standardStatus: status.default('practice'),
  })),
  signs: listOf(textOf(8)),
  caution: z.strictObject({ screen: textOf(500), spoken: textOf(1000) }),
  show: textOf(500),
  deferral: deferral.nullable().default(null),
  needsSecondPerson: flag,
  sources: listOf(z.strictObject({ text: textOf(1000), status, reviewed: orNull(civilDate).default(null) })),
  replaces: orNull(textOf(64)).default(null),
});

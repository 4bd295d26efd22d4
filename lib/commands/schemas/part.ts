import { z } from 'zod';
import { idOf, lineId, listOf, nameOf, oneOf, orNull, textOf, type FormSetting } from './values';

/** What a person fills in about a part. */
export const partSchema = (setting: FormSetting) => z.strictObject({
  name: nameOf('The part'),
  assembly: textOf(200),
  states: listOf(z.strictObject({ id: lineId(setting), name: nameOf('The state') })),
  whereabouts: z.strictObject({ kind: oneOf(['place', 'trade', 'store']), id: orNull(idOf('place or trade')).default(null) })
    .transform(({ kind, id }) => (kind === 'store' || id === null ? { kind: 'store' as const, id: null } : { kind, id }))
    .default({ kind: 'store', id: null }),
});

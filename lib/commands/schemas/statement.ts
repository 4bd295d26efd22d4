import { instant } from '@/lib/units';
import { z } from 'zod';
import { idOf, listOf, nameOf, oneOf, textOf } from './values';

const id = (what: string) => idOf(what);
/** Line and block names hold texts of the library. */
const long = z.string().trim().min(1).max(2000);

export const evidenceSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('take'), take: textOf(400), timecode: textOf(40), entryId: z.string().trim().max(64).optional() }),
  z.strictObject({ kind: z.literal('exception') }),
  z.strictObject({ kind: z.literal('withdrawn') }),
]);

/** What is signed. The program itself adds who signs, and when. */
const statementAbout = z.discriminatedUnion('sort', [
  z.strictObject({ sort: oneOf(['hazard-added', 'hazard-removed']), taskId: id('task'), hazardId: id('hazard') }),
  z.strictObject({ sort: z.literal('evidence'), episodeId: id('episode'), itemId: long, fingerprint: long, evidence: evidenceSchema }),
  z.strictObject({ sort: z.literal('override'), episodeId: id('episode'), status: oneOf(['cleared', 'released']), blocks: listOf(long) }),
]);

/** A whole statement. Commands make them, no form does. */
export const statementSchema = z.strictObject({
  name: nameOf('The statement'), about: statementAbout, personId: id('person'), signedBy: textOf(200), at: z.number().int().transform(instant), reason: textOf(),
});

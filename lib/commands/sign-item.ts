import { createRecord, findRecord, type Evidence, type SeriesDocument } from '@/lib/build';
import { fail, issue, ok, type Result } from '@/lib/result';
import { buildChecklist, readTakeEvidence, signStatement, type ChecklistItem, type Footage } from '@/lib/safety';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { readInput } from './read-input';
import { loadScene } from './safety-scene';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { evidenceSchema } from './schemas/statement';
import { idOf, textOf } from './schemas/values';

const schema = z.strictObject({
  episodeId: idOf('episode'), itemId: z.string().trim().min(1).max(2000),
  /** What the person saw. */
  fingerprint: z.string().trim().max(100), personId: textOf(64), evidence: evidenceSchema, reason: textOf(),
});

/** The line as it is now, if it is still the one that the person saw. */
function findItem(items: readonly ChecklistItem[], itemId: string, fingerprint: string): Result<ChecklistItem> {
  const item = items.find(({ id }) => id === itemId);
  if (item === undefined) return fail([issue('item-missing', 'This line is no longer on the checklist.', 'Load the page again.', { path: ['itemId'] })]);
  if (item.fingerprint !== fingerprint) return fail([issue('item-changed', 'What this line stands on has changed since you opened the page.', 'Load the page again, look once more, then sign.', { path: ['itemId'] })]);
  if (item.issues.length > 0) return fail(item.issues);
  return ok(item);
}

/** A take of the log is looked up there; what was typed is taken as it is. */
function readEvidence(document: SeriesDocument, footage: Footage, item: ChecklistItem, evidence: Evidence): Result<Evidence> {
  if (evidence.kind !== 'take' || evidence.entryId === undefined) return ok(evidence);
  return readTakeEvidence(document, footage, item, { entryId: evidence.entryId, timecode: evidence.timecode });
}

const DONE = { take: 'Signed', exception: 'Signed an exception', withdrawn: 'Took a signature back' } as const;

function describe(document: SeriesDocument, episodeId: string, kind: keyof typeof DONE, item: ChecklistItem): string {
  const text = item.hazard === null ? item.text : `${item.hazard.name}: ${item.text}`;
  const name = findRecord(document, 'episode', episodeId)?.name ?? '';
  return `${DONE[kind]}, ${name.slice(0, 40)}: ${text}`.slice(0, 190);
}

/**
 * Signs a line of an episode's checklist with a take of the log, with a take and timecode as typed, with a reviewed exception,
 * or takes a signature back. Fails with `input-value`, `item-missing`, `item-changed`, `departure-incomplete`, `signed-by-nobody`,
 * `reason-missing`, the issues of {@link readTakeEvidence} or those of a typed timecode.
 */
export async function signItem(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<Saved>> {
  const sent = readInput(schema, input);
  if (!sent.ok) return sent;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const { episodeId, itemId, fingerprint, personId, evidence, reason } = sent.value;
  const document = loaded.value;
  const scene = await loadScene(context, seriesId);
  const item = findItem(buildChecklist(document, episodeId, scene).items, itemId, fingerprint);
  if (!item.ok) return item;
  const read = readEvidence(document, scene.footage, item.value, evidence);
  const statement = signStatement(document, {
    id: context.newId(), name: describe(document, episodeId, evidence.kind, item.value), personId, reason, at: context.now(),
    about: { sort: 'evidence', episodeId, itemId, fingerprint, evidence: read.ok ? read.value : evidence },
  });
  if (!read.ok) return fail([...read.error, ...(statement.ok ? [] : statement.error)]);
  return statement.ok ? saveEdited(context, document, createRecord(document, statement.value)) : statement;
}

import { changeRecord, createRecord, findRecord, type Edited, type SeriesDocument } from '@/lib/build';
import { fail, issue, ok, type Result } from '@/lib/result';
import { buildChecklist, judgeGate, signStatement } from '@/lib/safety';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { readInput } from './read-input';
import { loadScene } from './safety-scene';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { idOf, oneOf, textOf, wholeNumber } from './schemas/values';

const schema = z.strictObject({
  episodeId: idOf('episode'), revision: wholeNumber('changes'), status: oneOf(['cleared', 'released']), personId: textOf(64), reason: textOf(),
  /** How many open blocks the person saw. */
  seen: wholeNumber('blocks'),
});

type Asked = z.infer<typeof schema>;

/** The signature and the new status are one change, so that neither stands without the other. */
function joinEdits(document: SeriesDocument, signed: Result<Edited>, { episodeId, revision, status }: Asked): Result<Edited> {
  if (!signed.ok) return signed;
  const moved = changeRecord(signed.value.document, 'episode', episodeId, revision, { status });
  if (!moved.ok) return moved;
  const name = findRecord(document, 'episode', episodeId)?.name ?? '';
  return ok({ document: moved.value.document, change: { label: `Override: ${name.slice(0, 60)} called ${status} in spite of the gate`, edits: [...signed.value.change.edits, ...moved.value.change.edits], undoes: null } });
}

/**
 * Calls an episode cleared or released in spite of open blocks. The reason and the person stay for ever.
 * Fails with `input-value`, `record-missing`, `gate-open` (nothing to override), `gate-changed` (other blocks than those seen),
 * `signed-by-nobody`, `reason-missing` or `stale-record`.
 */
export async function overrideGate(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<Saved>> {
  const read = readInput(schema, input);
  if (!read.ok) return read;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const document = loaded.value;
  const { episodeId, status, personId, reason, seen } = read.value;
  const episode = findRecord(document, 'episode', episodeId);
  if (episode === undefined) return fail([issue('record-missing', 'This episode is no longer in the series.', 'Load the page again.', { path: ['episodeId'] })]);
  const { open } = judgeGate(document, buildChecklist(document, episodeId, await loadScene(context, seriesId)));
  if (open.length === 0) return fail([issue('gate-open', 'Nothing blocks this episode, so there is nothing to override.', 'Change its status on its own page.', { path: ['episodeId'] })]);
  if (open.length !== seen) return fail([issue('gate-changed', `You saw ${seen} blocks, and there are ${open.length} now.`, 'Load the page again and read them.', { path: ['seen'] })]);
  const statement = signStatement(document, {
    id: context.newId(), name: `Override of ${open.length} blocks: ${episode.name}`.slice(0, 190), personId, reason, at: context.now(),
    about: { sort: 'override', episodeId, status, blocks: open.map(({ id }) => id) },
  });
  return statement.ok ? saveEdited(context, document, joinEdits(document, createRecord(document, statement.value), read.value)) : statement;
}

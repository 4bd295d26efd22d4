import { createRecord, findRecord } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import { listHazards, signStatement } from '@/lib/safety';
import { z } from 'zod';
import type { SeriesContext } from './context';
import { readInput } from './read-input';
import { loadDocument, saveEdited, type Saved } from './save-edited';
import { idOf, oneOf, textOf } from './schemas/values';

const schema = z.strictObject({
  taskId: idOf('task'), hazardId: idOf('hazard'), ruling: oneOf(['hazard-added', 'hazard-removed']), personId: textOf(64), reason: textOf(),
});

/**
 * Adds a hazard to a task, or takes one out that the facts found; the reason stays on record.
 * Fails with `input-value`, `record-missing`, `hazard-missing`, `signed-by-nobody` or `reason-missing`.
 */
export async function ruleHazard(context: SeriesContext, seriesId: string, input: unknown): Promise<Result<Saved>> {
  const read = readInput(schema, input);
  if (!read.ok) return read;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const document = loaded.value;
  const { taskId, hazardId, ruling, personId, reason } = read.value;
  const task = findRecord(document, 'task', taskId);
  const hazard = listHazards(document).find(({ id }) => id === hazardId);
  if (task === undefined) return fail([issue('record-missing', 'This task is no longer in the series.', 'Load the page again.', { path: ['taskId'] })]);
  if (hazard === undefined) return fail([issue('hazard-missing', 'There is no such hazard.', 'Choose one from the list.', { path: ['hazardId'] })]);
  const verb = ruling === 'hazard-added' ? 'Added' : 'Took out';
  const statement = signStatement(document, {
    id: context.newId(), name: `${verb} “${hazard.name}”, ${task.name}`.slice(0, 190), personId, reason, at: context.now(),
    about: { sort: ruling, taskId, hazardId },
  });
  return statement.ok ? saveEdited(context, document, createRecord(document, statement.value)) : statement;
}

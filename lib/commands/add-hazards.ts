import { createRecords, type HazardRecord, type SeriesDocument } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { checkHazard } from '@/lib/safety';
import { buildRecord, settingOf } from './build-record';
import type { SeriesContext } from './context';
import { loadDocument, saveEdited, type Saved } from './save-edited';

/** Longest text brought in at once. */
const LONGEST = 400_000;

function readList(text: string): Result<readonly unknown[]> {
  if (text.length > LONGEST) return fail([issue('import-too-long', `The text has ${text.length} characters.`, `Bring in at most ${LONGEST} at once.`, { path: ['text'] })]);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return fail([issue('import-not-json', 'This text is not JSON.', 'Copy a hazard of the library as text, change it, and paste all of it.', { path: ['text'] })]);
  }
  const list: readonly unknown[] = Array.isArray(value) ? value : [value];
  return list.length === 0 ? fail([issue('import-empty', 'There is no hazard in the text.', 'Paste at least one.', { path: ['text'] })]) : ok(list);
}

/** Says which of several hazards an issue is about. */
function nameIn(found: Issue, index: number, count: number): Issue {
  return count === 1 ? found : { ...found, message: `Hazard ${index + 1}: ${found.message}`, path: ['text', index, ...found.path] };
}

function buildAll(context: SeriesContext, document: SeriesDocument, list: readonly unknown[]): Result<readonly HazardRecord[]> {
  const issues: Issue[] = [];
  const records = list.flatMap((input, index) => {
    const built = buildRecord('hazard', context.newId(), input, settingOf(context, document));
    const found = built.ok ? checkHazard(built.value) : built.error;
    issues.push(...found.map((one) => nameIn(one, index, list.length)));
    return built.ok ? [built.value] : [];
  });
  return issues.length > 0 ? fail(issues) : ok(records);
}

/**
 * Brings in hazards of the users' own as JSON: one, or a list. All of them or none; each issue says which and why.
 * Fails with `import-not-json`, `import-empty`, `import-too-long`, the issues of the form, and those of `checkHazard`
 * (`hazard-without-source`, `sign-unknown`, …).
 */
export async function addHazards(context: SeriesContext, seriesId: string, text: string): Promise<Result<Saved>> {
  const list = readList(text);
  if (!list.ok) return list;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const records = buildAll(context, loaded.value, list.value);
  if (!records.ok) return records;
  const label = records.value.length === 1 ? `Added hazard ${records.value[0]?.name ?? ''}`.slice(0, 190) : `Added ${records.value.length} hazards`;
  return saveEdited(context, loaded.value, createRecords(loaded.value, records.value, label));
}

/** A change of one record that has a name of its own in the history. */
import { changeRecords, findForWrite, labelOf, type RecordOf, type SeriesDocument, type SeriesRecord } from '@/lib/build';
import { ok, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { explainStale } from './explain-stale';
import { loadDocument, saveEdited, type Saved } from './save-edited';

/** What becomes of the record and of others, and how the history calls it. */
interface Turn {
  /** `Done:` in front of the record's name. */
  readonly word: string;
  readonly records: readonly SeriesRecord[];
}

/** Loads the record at the revision that the person saw, lets `turn` decide, saves one change. */
export async function changeOne<K extends 'task' | 'outsideJob' | 'timeLog' | 'segment'>(
  context: SeriesContext, seriesId: string, write: { readonly kind: K; readonly id: string; readonly revision: number },
  turn: (record: RecordOf<K>, document: SeriesDocument) => Result<Turn>,
): Promise<Result<Saved>> {
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const document = loaded.value;
  const found = await explainStale(context, document, write, findForWrite(document, write.kind, write.id, write.revision));
  if (!found.ok) return found;
  const turned = turn(found.value, document);
  if (!turned.ok) return turned;
  const { word, records } = turned.value;
  return saveEdited(context, document, changeRecords(document, records, `${word} ${labelOf(found.value)}`));
}

/** A turn of the record alone. */
export function turnTo(word: string, ...records: readonly SeriesRecord[]): Result<Turn> {
  return ok({ word, records });
}

import { fieldsOfLibrary, findMaterial } from '@/lib/cure';
import { fail, issue, type Result } from '@/lib/result';
import type { SeriesContext } from './context';
import { createRecord, type Created } from './create-record';

/** Copies a material of the library into the series, to be edited there. Fails with `no-such-material` or as `createRecord` does. */
export async function copyMaterial(context: SeriesContext, seriesId: string, libraryId: string): Promise<Result<Created>> {
  const material = findMaterial(libraryId);
  if (material === null) {
    return fail([issue('no-such-material', `The library has no material “${libraryId.slice(0, 40)}”.`, 'Choose one of the list.')]);
  }
  return createRecord(context, seriesId, 'material', fieldsOfLibrary(material));
}

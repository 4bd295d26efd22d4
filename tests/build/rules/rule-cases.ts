/** How rule tests read the issues of a document. */
import { checkSeries, type SeriesDocument } from '@/lib/build';
import type { Issue } from '@/lib/result';

/** Issues of the whole series with one code. */
export function issuesOf(document: SeriesDocument, code: string): readonly Issue[] {
  return checkSeries(document).filter((found) => found.code === code);
}

/** Codes of everything wrong, each once, sorted. */
export function codesOf(document: SeriesDocument): readonly string[] {
  return [...new Set(checkSeries(document).map(({ code }) => code))].toSorted();
}

/** The list with one record changed. @example changed(sample.people, 'person-kim', { skills: [] }) */
export function changed<T extends { readonly id: string }>(list: readonly T[], id: string, more: Partial<T>): readonly T[] {
  if (!list.some((record) => record.id === id)) throw new Error(`No record ${id}`);
  return list.map((record) => (record.id === id ? { ...record, ...more } : record));
}

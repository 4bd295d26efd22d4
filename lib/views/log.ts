/** The log of a day, or what was found in all of it. */
import type { SeriesDocument } from '@/lib/build';
import { addDays, dateOf, endOfDay, formatDay, isCivilDate, startOfDay } from '@/lib/calendar';
import { standingEntries, type LogEntry } from '@/lib/continuity';
import type { ViewContext } from './context';
import { describeEntry, sayCameraClock, type EntryView } from './log-words';

export interface LogView {
  readonly day: string;
  /** `Tue 1 Dec`. */
  readonly dayWord: string;
  readonly isToday: boolean;
  readonly before: string;
  /** null: tomorrow has no log yet. */
  readonly after: string | null;
  readonly entries: readonly EntryView[];
  /** Entries of the whole log. */
  readonly count: number;
  /** The last day with entries; null for an empty log. */
  readonly lastDay: string | null;
  readonly people: readonly string[];
  /** Each camera and how its clock stands. */
  readonly cameras: readonly { readonly id: string; readonly name: string; readonly clock: string }[];
}

export interface FoundView {
  readonly entries: readonly (EntryView & { readonly day: string })[];
  readonly hasMore: boolean;
}

const MOST_FOUND = 50;

async function photosByEntry({ storage }: ViewContext, seriesId: string): Promise<ReadonlyMap<string, readonly string[]>> {
  const photos = new Map<string, string[]>();
  for (const { id, entryId } of await storage.listLogPhotos(seriesId)) photos.set(entryId, [...(photos.get(entryId) ?? []), id]);
  return photos;
}

/** Photos of an entry and of those that it took the place of. */
function photosOf(entry: LogEntry, all: ReadonlyMap<string, LogEntry>, photos: ReadonlyMap<string, readonly string[]>): readonly string[] {
  const own: string[] = [];
  const seen = new Set<string>();
  for (let next: LogEntry | undefined = entry; next !== undefined && !seen.has(next.id); next = next.supersedes === null ? undefined : all.get(next.supersedes)) {
    seen.add(next.id);
    own.push(...(photos.get(next.id) ?? []));
  }
  return own;
}

/** The log of a civil day of the series, newest first; `asked` that is no date means today. */
export async function viewLog(context: ViewContext, document: SeriesDocument, asked: string | undefined): Promise<LogView> {
  const { series } = document;
  const today = dateOf(context.now, series.zone);
  const day = asked !== undefined && isCivilDate(asked) ? asked : today;
  const [entries, extent, photos] = await Promise.all([
    context.storage.listLogEntries(series.id, { from: startOfDay(day, series.zone), until: endOfDay(day, series.zone) }), context.storage.measureLog(series.id), photosByEntry(context, series.id),
  ]);
  const all = new Map(entries.map((entry) => [entry.id, entry]));
  return {
    day, dayWord: formatDay(day), isToday: day === today, before: addDays(day, -1), after: day >= today ? null : addDays(day, 1),
    entries: standingEntries(entries).toReversed().map((entry) => describeEntry(document, entry, photosOf(entry, all, photos))),
    count: extent.count, lastDay: extent.last === null ? null : dateOf(extent.last, series.zone), people: document.people.map(({ name }) => name),
    cameras: document.cameras.map((camera) => ({ id: camera.id, name: camera.name, clock: sayCameraClock(camera) })),
  };
}

/** Entries that hold every word, newest first. */
export async function searchLog(context: ViewContext, document: SeriesDocument, text: string): Promise<FoundView> {
  const { id, zone } = document.series;
  const [found, photos] = await Promise.all([context.storage.searchLog(id, text, MOST_FOUND + 1), photosByEntry(context, id)]);
  const all = new Map(found.map((entry) => [entry.id, entry]));
  const entries = found.slice(0, MOST_FOUND).map((entry) => ({ ...describeEntry(document, entry, photosOf(entry, all, photos)), day: dateOf(entry.at, zone) }));
  return { entries, hasMore: found.length > MOST_FOUND };
}

/** JPEG bytes of a photo; null when there is none. */
export async function viewPhoto({ storage }: ViewContext, seriesId: string, photoId: string, isSmall: boolean): Promise<Uint8Array | null> {
  return storage.loadLogPhoto(seriesId, photoId, isSmall ? 'small' : 'large');
}

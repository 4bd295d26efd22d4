/** Where clock and storage enter the pages. */
import { cache } from 'react';
import type { SeriesDocument } from '@/lib/build';
import { openStorage, type Storage } from '@/lib/storage';
import { instant, type Instant } from '@/lib/units';

export interface ViewContext {
  readonly storage: Storage;
  /** The moment the page is made. */
  readonly now: Instant;
  /** IANA zone this machine stands in, offered for a new series. */
  readonly zone: string;
}

/** The same storage, moment and zone for everything within one request. */
export const openViewContext = cache(
  async (): Promise<ViewContext> => ({
    storage: await openStorage(),
    now: instant(Date.now()),
    zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
  }),
);

/** A whole series, read once a request; null when there is none of that id. */
export const loadDocument = cache(async (seriesId: string): Promise<SeriesDocument | null> => {
  const { storage } = await openViewContext();
  return storage.loadSeries(seriesId);
});

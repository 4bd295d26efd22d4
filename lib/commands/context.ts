/** What a command needs from outside: the database, the clock and new ids. */
import type { Storage } from '@/lib/storage';
import type { Instant } from '@/lib/units';

/** The part of the database that commands on a build use. */
export type SeriesStore = Pick<
  Storage,
  'listSeries' | 'loadSeries' | 'createSeries' | 'removeSeries' | 'applyChange' | 'getChange' | 'listChanges' | 'acceptedPlan' | 'saveReadings' | 'listReadings' | 'listLogEntries'
>;

/** Enough for every command on a build. */
export interface SeriesContext {
  readonly storage: SeriesStore;
  readonly now: () => Instant;
  /** A new id each time, unlike any other. */
  readonly newId: () => string;
}

/** Enough for every command. */
export interface CommandContext extends SeriesContext {
  readonly storage: Storage;
}

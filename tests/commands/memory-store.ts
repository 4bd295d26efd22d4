/** A series store in memory, with the refusals of the real one that commands meet: stale records and series that are gone. */
import { applyEdits, concernsPlan, findRecord, type Change, type SavedChange, type SeriesDocument } from '@/lib/build';
import type { SeriesContext, SeriesStore } from '@/lib/commands';
import type { Reading } from '@/lib/climate';
import type { LogEntry } from '@/lib/footage';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { at } from '../build/sample-series';

interface Kept {
  readonly document: SeriesDocument;
  readonly changes: readonly SavedChange[];
}

function emptyDocument(series: SeriesDocument['series']): SeriesDocument {
  return {
    series, changeNumber: 0, planChange: 0, people: [], places: [], equipment: [], parts: [], materials: [], trades: [], outsideJobs: [], tasks: [], links: [], sessions: [], episodes: [],
    segments: [], timeLogs: [], sponsorships: [], hazards: [], statements: [],
    coatingSystems: [], heatingRuns: [], weather: [], readings: [], cameras: [], promises: [],
  };
}

function write(kept: Kept, change: Change, moment: Instant): Result<Kept> {
  const stale = change.edits.filter(({ kind, id, before }) => findRecord(kept.document, kind, id)?.revision !== before?.revision);
  if (stale.length > 0) return fail(stale.map(({ id }) => issue('stale-record', `Record ${id} has moved on.`, 'Load again.')));
  const number = kept.document.changeNumber + 1;
  const saved: SavedChange = { ...change, number, at: moment, undoneBy: null };
  const changes = kept.changes.map((old) => (old.number === change.undoes ? { ...old, undoneBy: number } : old));
  const planChange = concernsPlan(kept.document.series, change.edits) ? number : kept.document.planChange;
  return ok({ document: { ...applyEdits(kept.document, change.edits), changeNumber: number, planChange }, changes: [...changes, saved] });
}

export interface MemoryContext extends SeriesContext {
  /** Times that something was written. */
  readonly writes: () => number;
  readonly document: (seriesId?: string) => SeriesDocument;
  /** The log, to be filled by the test. */
  readonly log: LogEntry[];
}

/** A context on a store that holds the given series. The clock stands at 2026-11-30 12:00; ids are new-1, new-2 … */
export function memoryContext(...documents: readonly SeriesDocument[]): MemoryContext {
  const kept = new Map<string, Kept>(documents.map((document) => [document.series.id, { document, changes: [] }]));
  const log: LogEntry[] = [];
  const readings = new Map<string, readonly Reading[]>();
  let [writes, ids] = [0, 0];
  const storage: SeriesStore = {
    listSeries: async () => [...kept.values()].map(({ document: { series, changeNumber, planChange } }) => ({ id: series.id, name: series.name, changeNumber, planChange, createdAt: at('2026-11-30', '12:00') })),
    loadSeries: async (id) => kept.get(id)?.document ?? null,
    createSeries: async (series) => {
      if (kept.has(series.id)) return fail([issue('series-exists', 'There is one.', 'Start again.')]);
      writes += 1;
      kept.set(series.id, { document: emptyDocument(series), changes: [] });
      return ok(undefined);
    },
    removeSeries: async (id) => {
      writes += 1;
      return kept.delete(id);
    },
    applyChange: async (id, change, moment) => {
      const old = kept.get(id);
      if (old === undefined) return fail([issue('no-such-series', 'It is gone.', 'Choose another.')]);
      const written = write(old, change, moment);
      if (!written.ok) return written;
      writes += 1;
      kept.set(id, written.value);
      const saved = written.value.changes.at(-1);
      if (saved === undefined) throw new Error('A change was just written');
      return ok(saved);
    },
    saveReadings: async (id, readingsId, rows) => {
      readings.set(`${id} ${readingsId}`, rows);
      return ok(undefined);
    },
    listReadings: async (id, readingsId, { from, to }) => (readings.get(`${id} ${readingsId}`) ?? []).filter((row) => row.at >= from && row.at <= to),
    getChange: async (id, number) => kept.get(id)?.changes.find((change) => change.number === number) ?? null,
    acceptedPlan: async () => null,
    listLogEntries: async () => log,
    listChanges: async (id, limit) => (kept.get(id)?.changes ?? []).toReversed().slice(0, limit),
  };
  return {
    storage, now: () => at('2026-11-30', '12:00'), newId: () => `new-${(ids += 1)}`, writes: () => writes, log,
    document: (id = documents[0]?.series.id ?? '') => {
      const found = kept.get(id);
      if (found === undefined) throw new Error(`No series ${id}`);
      return found.document;
    },
  };
}

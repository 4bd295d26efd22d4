import type { RecordKind, RecordOf } from '@/lib/build';
import type { Table } from '../table';
import { cameras } from './cameras';
import { coatingSystems, heatingRuns, readingSets, weatherTables } from './climate';
import { episodes } from './episodes';
import { links } from './links';
import { materials } from './materials';
import { outsideJobs } from './outside-jobs';
import { parts } from './parts';
import { people } from './people';
import { equipment, places } from './places';
import { promises } from './promises';
import { hazards, statements } from './safety';
import { segments } from './segments';
import { seriesTable } from './series';
import { sessions } from './sessions';
import { sponsorships } from './sponsorships';
import { tasks } from './tasks';
import { timeLogs } from './time-logs';
import { trades } from './trades';

export const TABLES: { readonly [K in RecordKind]: Table<RecordOf<K>> } = {
  series: seriesTable,
  person: people,
  place: places,
  equipment,
  part: parts,
  material: materials,
  trade: trades,
  outsideJob: outsideJobs,
  task: tasks,
  link: links,
  session: sessions,
  episode: episodes,
  segment: segments,
  timeLog: timeLogs,
  sponsorship: sponsorships,
  hazard: hazards,
  statement: statements,
  coatingSystem: coatingSystems,
  heatingRun: heatingRuns,
  weather: weatherTables,
  readings: readingSets,
  camera: cameras,
  promise: promises,
};

/** What is pointed at comes before what points at it: rows are written in this order and removed in the reverse one. */
export const WRITE_ORDER: readonly RecordKind[] = [
  'series', 'person', 'place', 'equipment', 'trade', 'part', 'material', 'episode', 'task', 'outsideJob', 'link', 'session', 'segment', 'timeLog', 'sponsorship', 'hazard', 'statement',
  'coatingSystem', 'heatingRun', 'weather', 'readings', 'camera', 'promise',
];

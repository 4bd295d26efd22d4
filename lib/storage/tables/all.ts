import type { RecordKind, RecordOf } from '@/lib/build';
import type { Table } from '../table';
import { cameras } from './cameras';
import { episodes } from './episodes';
import { links } from './links';
import { materials } from './materials';
import { outsideJobs } from './outside-jobs';
import { parts } from './parts';
import { people } from './people';
import { equipment, places } from './places';
import { promises } from './promises';
import { seriesTable } from './series';
import { sessions } from './sessions';
import { tasks } from './tasks';
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
  camera: cameras,
  promise: promises,
};

/** What is pointed at comes before what points at it: rows are written in this order and removed in the reverse one. */
export const WRITE_ORDER: readonly RecordKind[] = [
  'series', 'person', 'place', 'equipment', 'trade', 'part', 'material', 'episode', 'task', 'outsideJob', 'link', 'session',
  'camera', 'promise',
];

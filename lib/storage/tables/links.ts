import type { DryingStage, Link, WorkRef } from '@/lib/build';
import { minutes } from '@/lib/units';
import type { LinkModel } from '../generated/models';
import { oneOf, readValue } from '../column';
import { plainTable } from '../table';

const stages = oneOf<DryingStage>({ touchDry: true, recoatFrom: true, handle: true, fullCure: true });
const clocks = oneOf<Link['clock']>({ elapsed: true, working: true });

const taskId = (ref: WorkRef) => (ref.kind === 'task' ? ref.id : null);
const jobId = (ref: WorkRef) => (ref.kind === 'outsideJob' ? ref.id : null);

export const links = plainTable<Link, LinkModel>({
  kind: 'link',
  model: (db) => db.link,
  toRow: ({ from, to, stage, minWait, maxWait, clock }, common) => ({
    ...common,
    fromTaskId: taskId(from),
    fromJobId: jobId(from),
    toTaskId: taskId(to),
    toJobId: jobId(to),
    stage,
    minWait,
    maxWait,
    clock,
  }),
  fromRow: (row) => ({
    kind: 'link',
    id: row.id,
    revision: row.revision,
    order: row.position,
    name: row.name,
    from: readEnd(row.fromTaskId, row.fromJobId, row.id, 'from'),
    to: readEnd(row.toTaskId, row.toJobId, row.id, 'to'),
    stage: row.stage === null ? null : readValue(stages, row.stage, { table: 'Link', row: row.id, column: 'stage' }),
    minWait: minutes(row.minWait),
    maxWait: row.maxWait === null ? null : minutes(row.maxWait),
    clock: readValue(clocks, row.clock, { table: 'Link', row: row.id, column: 'clock' }),
  }),
});

function readEnd(task: string | null, job: string | null, row: string, end: 'from' | 'to'): WorkRef {
  if (task !== null) return { kind: 'task', id: task };
  if (job !== null) return { kind: 'outsideJob', id: job };
  throw new Error(`The database is damaged: table Link, row ${row}, columns ${end}TaskId and ${end}JobId are both empty.`);
}

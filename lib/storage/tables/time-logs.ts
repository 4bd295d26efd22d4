import type { TimeLog } from '@/lib/build';
import type { TimeLogModel } from '../generated/models';
import { oneOf, readInstant, readOptionalInstant, readValue, writeInstant, writeOptionalInstant } from '../column';
import { plainTable } from '../table';

const activities = oneOf<TimeLog['activity']>({ 'hands-on': true, filming: true });

export const timeLogs = plainTable<TimeLog, TimeLogModel>({
  kind: 'timeLog',
  model: (db) => db.timeLog,
  toRow: ({ taskId, activity, start, end, wasInterrupted }, common) => ({
    ...common, taskId, activity, start: writeInstant(start), end: writeOptionalInstant(end), wasInterrupted,
  }),
  fromRow: ({ id, revision, position, name, taskId, activity, start, end, wasInterrupted }) => ({
    kind: 'timeLog',
    id,
    revision,
    order: position,
    name,
    taskId,
    activity: readValue(activities, activity, { table: 'TimeLog', row: id, column: 'activity' }),
    start: readInstant(start),
    end: readOptionalInstant(end),
    wasInterrupted,
  }),
});

import { createRecord, type TimeLog } from '@/lib/build';
import { fail, issue, type Result } from '@/lib/result';
import { changeOne, turnTo } from './change-one';
import type { SeriesContext } from './context';
import { editSeries, type Saved } from './save-edited';

/** Starts a time log of a task now. Fails with `record-missing`, or with `log-running` while one of the same kind runs for the task. */
export async function logTime(context: SeriesContext, seriesId: string, taskId: string, activity: TimeLog['activity']): Promise<Result<Saved>> {
  return editSeries(context, seriesId, (document) => {
    const task = document.tasks.find((each) => each.id === taskId);
    if (task === undefined) return fail([issue('record-missing', 'The task is not there any more.', 'Load the page again.')]);
    if (document.timeLogs.some((log) => log.taskId === taskId && log.activity === activity && log.end === null)) {
      return fail([issue('log-running', `The time of “${task.name}”, ${activity}, is running already.`, 'Stop it first.')]);
    }
    return createRecord(document, {
      kind: 'timeLog', id: context.newId(), revision: 1, order: 0, name: task.name, taskId, activity, start: context.now(), end: null, wasInterrupted: false,
    });
  });
}

/** Stops a running time log now. Fails with `record-missing`, `stale-record` or `log-stopped`. */
export async function stopTimeLog(context: SeriesContext, seriesId: string, id: string, revision: number, wasInterrupted: boolean): Promise<Result<Saved>> {
  return changeOne(context, seriesId, { kind: 'timeLog', id, revision }, (log) => {
    if (log.end !== null) return fail([issue('log-stopped', 'This time log is stopped already.', 'Change its end in the records.')]);
    return turnTo('Stopped:', { ...log, end: context.now(), wasInterrupted });
  });
}

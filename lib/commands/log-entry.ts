import { correctClock } from '@/lib/continuity';
import { framesPerDay, isTake, readTimecode, wordsOf, type LogEntry, type TakeFacts, type TimecodeFormat } from '@/lib/footage';
import { findRecord, type SeriesDocument } from '@/lib/build';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { instant, type Instant } from '@/lib/units';
import type { CommandContext } from './context';
import { loadDocument } from './save-edited';
import { logEntrySchema, type SentEntry, type SentTake } from './schemas/log-entry';
import { splitMessage } from './schemas/values';

/** What became of an entry that a device sent. */
export interface Logged {
  readonly entry: LogEntry;
  /** False: it had come before, and the log is as it was. */
  readonly isNew: boolean;
  /** What could not be understood in it and was kept as words, and a clock that is off. */
  readonly warnings: readonly Issue[];
}

function warn(code: string, message: string, fix: string): Issue {
  return issue(code, message, fix, { severity: 'warn' });
}

/** Well-formed, or every issue with its path. */
function readSent(input: unknown): Result<SentEntry> {
  const parsed = logEntrySchema.safeParse(input);
  if (parsed.success) return ok(parsed.data);
  return fail(parsed.error.issues.map((found) => {
    const { problem, fix } = splitMessage(found.message);
    return issue('log-entry-value', problem, fix, { path: found.path.filter((step) => typeof step !== 'symbol') });
  }));
}

interface Understood<T> {
  readonly value: T;
  readonly warnings: readonly Issue[];
  /** What goes into the text, so that nothing is lost. */
  readonly rest: readonly string[];
}

function readLabel(label: string, format: TimecodeFormat | null, which: string): Understood<number | null> {
  if (label === '') return { value: null, warnings: [], rest: [] };
  const kept = [`${which} as read: ${label}`];
  if (format === null) return { value: null, warnings: [warn('take-without-camera', 'A timecode came without its camera, so it is kept as words.', 'Choose the camera.')], rest: kept };
  const read = readTimecode(label, format);
  return read.ok ? { value: read.value, warnings: [], rest: [] } : { value: null, warnings: read.error.map((found): Issue => ({ ...found, severity: 'warn' })), rest: kept };
}

/** A take that ends at the label of midnight ends after the last frame of the day. */
function endAfter(start: number | null, end: number | null, format: TimecodeFormat | null): number | null {
  return end === 0 && start !== null && start > 0 && format !== null ? framesPerDay(format) : end;
}

function understandTake(document: SeriesDocument, sent: SentTake, number: number): Understood<TakeFacts> {
  const camera = sent.cameraId === null ? undefined : findRecord(document, 'camera', sent.cameraId);
  const format = camera === undefined ? null : { rate: camera.rate, isDropFrame: camera.isDropFrame };
  const [start, end] = [readLabel(sent.start, format, 'Start'), readLabel(sent.end, format, 'End')];
  const { cameraId: _cameraId, start: _start, end: _end, number: _number, ...rest } = sent;
  return {
    value: { ...rest, cameraId: camera?.id ?? null, format, startFrame: start.value, endFrame: endAfter(start.value, end.value, format), number: sent.number ?? number },
    warnings: [...start.warnings, ...end.warnings], rest: [...start.rest, ...end.rest],
  };
}

/** The take after the last one of the same shot, or of the same task when no shot is named. */
function nextNumber(log: readonly LogEntry[], { taskId, shotId }: SentEntry): number {
  return log.filter(isTake).filter((entry) => entry.taskId === taskId && entry.shotId === shotId).reduce((next, { take }) => Math.max(next, take.number + 1), 1);
}

/** Tasks, shots and parts that have been removed meanwhile: the entry stays, the pointer goes. */
function understandReferences(document: SeriesDocument, sent: SentEntry): Understood<Pick<LogEntry, 'taskId' | 'shotId' | 'observed'>> {
  const task = sent.taskId === null ? undefined : findRecord(document, 'task', sent.taskId);
  const shot = task?.shots.find(({ id }) => id === sent.shotId);
  const observed = sent.observed.filter(({ partId, stateId }) => {
    const part = findRecord(document, 'part', partId);
    return part !== undefined && (stateId === null || part.states.some(({ id }) => id === stateId));
  });
  const isGone = (sent.taskId !== null && task === undefined) || (sent.shotId !== null && shot === undefined) || observed.length < sent.observed.length;
  return {
    value: { taskId: task?.id ?? null, shotId: shot?.id ?? null, observed }, rest: [],
    warnings: isGone ? [warn('log-reference-gone', 'The entry names a task, shot or part that is not in the series any more; the rest of it is kept.', 'Log it again with what takes its place, if that matters.')] : [],
  };
}

const MOST_LOOKED_BACK = 2000;

/** Names by which the entry can be found. */
function namesOf(document: SeriesDocument, { taskId, shotId, observed, take }: Pick<LogEntry, 'taskId' | 'shotId' | 'observed' | 'take'>): readonly string[] {
  const task = taskId === null ? undefined : findRecord(document, 'task', taskId);
  const parts = observed.flatMap(({ partId, stateId }) => {
    const part = findRecord(document, 'part', partId);
    return [part?.name, part?.states.find(({ id }) => id === stateId)?.name];
  });
  const camera = take?.cameraId == null ? undefined : findRecord(document, 'camera', take.cameraId);
  return [task?.name, task?.shots.find(({ id }) => id === shotId)?.name, camera?.name, ...parts].filter((name) => name !== undefined);
}

function understand(document: SeriesDocument, sent: SentEntry, number: number, receivedAt: Instant): Understood<Omit<LogEntry, 'number'>> {
  const clock = correctClock({ deviceAt: instant(sent.deviceAt), sentAt: instant(sent.sentAt), receivedAt });
  const references = understandReferences(document, sent);
  const take = sent.take === null ? null : understandTake(document, sent.take, number);
  const { sentAt: _sentAt, ...rest } = sent;
  return {
    value: {
      ...rest, ...references.value, deviceAt: instant(sent.deviceAt), at: clock.at, receivedAt, take: take?.value ?? null,
      text: [sent.text, ...(take?.rest ?? [])].filter((line) => line !== '').join('\n'),
    },
    warnings: [...clock.warnings, ...references.warnings, ...(take?.warnings ?? [])], rest: [],
  };
}

/**
 * Adds an entry to the log, exactly once: the same id again is answered as it is kept. Labels that are no timecode and
 * names that are gone do not refuse an entry; they are warned of and kept as words.
 * Fails with `log-entry-value`, `no-such-series` or `database-busy`.
 */
export async function logEntry(context: CommandContext, seriesId: string, input: unknown): Promise<Result<Logged>> {
  const sent = readSent(input);
  if (!sent.ok) return sent;
  const loaded = await loadDocument(context, seriesId);
  if (!loaded.ok) return loaded;
  const known = await context.storage.getLogEntry(seriesId, sent.value.id);
  if (known !== null) return ok({ entry: known, isNew: false, warnings: [] });
  const needsNumber = sent.value.take !== null && sent.value.take.number === null;
  const log = needsNumber ? await context.storage.listLogEntries(seriesId, { limit: MOST_LOOKED_BACK }) : [];
  const { value: entry, warnings } = understand(loaded.value, sent.value, nextNumber(log, sent.value), context.now());
  const kept = await context.storage.addLogEntries(seriesId, [{ entry, words: wordsOf({ ...entry, number: 0 }, namesOf(loaded.value, entry)) }]);
  if (!kept.ok) return kept;
  const [first] = kept.value;
  if (first === undefined) throw new Error('An entry was just kept');
  return ok({ ...first, warnings });
}

/** Takes of the log as evidence: which may be chosen, and what became of one that was. */
import type { Evidence, Series, SeriesDocument } from '@/lib/build';
import { isTake, readTimecode, standingEntries, writeTimecode, type LogEntry, type TakeEntry } from '@/lib/takes';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { ItemKind } from './checklist-item';

/** The log as far as evidence needs it. */
export interface Footage {
  readonly known: ReadonlySet<string>;
  /** Takes that count, by id, in the order in which they happened. */
  readonly standing: ReadonlyMap<string, TakeEntry>;
  /** What stands in the place of an entry that was corrected. */
  readonly replacedBy: ReadonlyMap<string, LogEntry>;
}

/** Reads the log. Entries that were corrected are kept for what became of them. */
export function gatherFootage(entries: readonly LogEntry[]): Footage {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const standing = standingEntries(entries);
  const replacedBy = new Map<string, LogEntry>();
  for (const entry of standing) {
    for (let earlier = entry.supersedes; earlier !== null && !replacedBy.has(earlier); earlier = byId.get(earlier)?.supersedes ?? null) replacedBy.set(earlier, entry);
  }
  return { known: new Set(byId.keys()), standing: new Map(standing.filter(isTake).map((entry) => [entry.id, entry])), replacedBy };
}

/** No log: every line that stands on a take of the log is open again. */
export const NO_FOOTAGE: Footage = gatherFootage([]);

/** These stand in the cut, not in a take. */
const IN_THE_CUT: readonly ItemKind[] = ['caption', 'captions', 'flash', 'disclosure', 'consents'];

/** True where a line may be answered with a take of the log. */
export function takesEvidence(kind: ItemKind): boolean {
  return !IN_THE_CUT.includes(kind);
}

/** Takes of some tasks that may be evidence: those that count and are not marked no good. */
export function listUsableTakes({ standing }: Footage, taskIds: readonly string[]): readonly TakeEntry[] {
  return [...standing.values()].filter(({ taskId, take }) => taskId !== null && taskIds.includes(taskId) && take.verdict !== 'no good');
}

/** Why a take that was signed for does not count any more, to follow “It was signed, and”; null while it counts. */
export function faultOfTake({ known, standing, replacedBy }: Footage, entryId: string, taskIds: readonly string[]): string | null {
  const entry = standing.get(entryId);
  const isOther = (taskId: string | null): boolean => taskId === null || !taskIds.includes(taskId);
  if (entry !== undefined) {
    if (entry.take.verdict === 'no good') return 'the take is marked no good';
    return isOther(entry.taskId) ? 'the take is of other work' : null;
  }
  const next = replacedBy.get(entryId);
  if (next?.take?.verdict === 'no good') return 'the take has been marked no good since';
  if (next !== undefined) return 'the take has been corrected in the log since';
  return known.has(entryId) ? 'the take has been taken back in the log since' : 'the log does not have the take';
}

/** @example sayTake(document, entry) // 'take 3 of “Hands clear”, Bench camera, A2 / 0003' */
export function sayTake(document: SeriesDocument, { take, taskId, shotId }: TakeEntry): string {
  const task = document.tasks.find(({ id }) => id === taskId);
  const of = task?.shots.find(({ id }) => id === shotId)?.name ?? task?.name;
  const camera = document.cameras.find(({ id }) => id === take.cameraId)?.name;
  return [`take ${take.number}${of === undefined ? '' : ` of “${of}”`}`, camera, take.media].filter((word) => word !== undefined && word !== '').join(', ');
}

/** Where a take starts, as a label; empty when nobody has read it. */
export function startOfTake({ take: { format, startFrame } }: TakeEntry): string {
  return format === null || startFrame === null ? '' : writeTimecode(startFrame, format);
}

const at = (found: Issue, step: string): Issue => ({ ...found, path: [step] });

/** A label within a take, or its start where nothing is typed. */
function readWithin(entry: TakeEntry, typed: string, rate: Series['frameRate']): Result<string> {
  const { format, startFrame, endFrame } = entry.take;
  const label = typed.trim() === '' ? startOfTake(entry) : typed.trim();
  if (label === '') return fail([issue('timecode-missing', 'Nobody has read the timecode of this take.', 'Type the timecode from the clip.', { path: ['timecode'] })]);
  const read = format === null ? readLabel(label, rate) : readTimecode(label, format);
  if (!read.ok) return fail(read.error.map((found) => at(found, 'timecode')));
  const isOutside = (startFrame !== null && read.value < startFrame) || (endFrame !== null && read.value >= endFrame);
  if (format === null || !isOutside) return ok(label);
  return fail([issue('timecode-outside-take', `${label} does not lie in this take, which starts at ${startOfTake(entry) || 'a frame nobody has read'}.`, 'Type a timecode within the take, or leave it empty for its start.', { path: ['timecode'] })]);
}

function refuse(code: string, message: string, fix: string): Result<Evidence> {
  return fail([issue(code, message, fix, { path: ['entryId'] })]);
}

/**
 * Evidence from a take of the log. Fails with `take-missing`, `take-no-good`, `take-of-other-work`, `take-not-cut`, `timecode-missing`,
 * `timecode-outside-take` or the issues of a label.
 */
export function readTakeEvidence(
  document: SeriesDocument, footage: Footage, line: { readonly kind: ItemKind; readonly taskIds: readonly string[] }, chosen: { readonly entryId: string; readonly timecode: string },
): Result<Evidence> {
  if (!takesEvidence(line.kind)) return refuse('take-not-cut', 'This line stands in the cut, and a take of the log is not the cut.', 'Name the cut and its timecode.');
  const entry = footage.standing.get(chosen.entryId);
  if (entry === undefined) return refuse('take-missing', 'This take does not count in the log any more.', 'Load the page again and choose another.');
  if (entry.take.verdict === 'no good') return refuse('take-no-good', 'This take is marked no good.', 'Choose another, or film a pickup.');
  if (entry.taskId === null || !line.taskIds.includes(entry.taskId)) return refuse('take-of-other-work', 'This take shows other work.', 'Choose a take of the tasks that this line is about.');
  const timecode = readWithin(entry, chosen.timecode, document.series.frameRate);
  return timecode.ok ? ok({ kind: 'take', take: sayTake(document, entry), timecode: timecode.value, entryId: entry.id }) : timecode;
}

/**
 * Frame of a label of the series, `;` for drop-frame. Fails like `readTimecode`, with the path of the timecode.
 * @example readLabel('00:12:04:11', { numerator: 25, denominator: 1 })
 */
export function readLabel(label: string, rate: Series['frameRate']): Result<number> {
  const read = readTimecode(label, { rate, isDropFrame: label.includes(';') });
  return read.ok ? read : fail(read.error.map((found) => at(found, 'timecode')));
}

/** Seconds of a label from 00:00:00:00. Fails like {@link readLabel}. @example timecodeSeconds('00:01:00;02', 30000/1001) // 60.06 */
export function timecodeSeconds(label: string, rate: Series['frameRate']): Result<number> {
  const frame = readLabel(label, rate);
  return frame.ok ? ok((frame.value * rate.denominator) / rate.numerator) : frame;
}

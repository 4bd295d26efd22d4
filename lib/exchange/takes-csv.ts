/** Takes as a table, out and in. */
import { checkFormat, FRAME_RATES, readTimecode, sayRate, writeTimecode, type TakeFacts, type TimecodeFormat } from '@/lib/footage';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import { instant, type Instant } from '@/lib/units';
import { readCsv, writeCsv } from './csv';

/** A take with names instead of ids where people read them. */
export interface TakeRow {
  readonly id: string;
  readonly at: Instant;
  readonly author: string;
  readonly taskId: string | null;
  readonly taskName: string;
  readonly shotId: string | null;
  readonly shotName: string;
  readonly cameraName: string;
  readonly take: TakeFacts;
  readonly text: string;
}

const HEAD = [
  'id', 'at', 'author', 'task', 'task id', 'shot', 'shot id', 'take', 'verdict', 'size', 'camera', 'camera id', 'rate', 'start', 'end', 'media', 're-enacted', 'label', 'failed attempt', 'note',
] as const;
type Column = (typeof HEAD)[number];

const yes = (value: boolean): string => (value ? 'yes' : 'no');

function writeRate({ rate, isDropFrame }: TimecodeFormat): string {
  return `${sayRate(rate)}${isDropFrame ? ' DF' : ''}`;
}

/** The end is the label of the frame after the last, as cutting programs write it; the frame at midnight is left empty. */
function writeFrame(frame: number | null, format: TimecodeFormat | null): string {
  if (frame === null || format === null) return '';
  try {
    return writeTimecode(frame, format);
  } catch {
    return '';
  }
}

export function writeTakesCsv(rows: readonly TakeRow[]): string {
  return writeCsv([HEAD, ...rows.map(({ id, at, author, taskId, taskName, shotId, shotName, cameraName, take, text }) => [
    id, new Date(at).toISOString(), author, taskName, taskId ?? '', shotName, shotId ?? '', String(take.number), take.verdict, take.size ?? '', cameraName, take.cameraId ?? '',
    take.format === null ? '' : writeRate(take.format), writeFrame(take.startFrame, take.format), writeFrame(take.endFrame, take.format), take.media,
    yes(take.isReenacted), take.reenactmentLabel, yes(take.isFailedAttempt), text,
  ])]);
}

function readFormat(text: string): TimecodeFormat | null | undefined {
  if (text === '') return null;
  const [, label = '', drop] = /^([\d.]+)( DF)?$/u.exec(text) ?? [];
  const rate = FRAME_RATES.find((known) => sayRate(known) === label);
  if (rate === undefined) return undefined;
  const format = { rate, isDropFrame: drop !== undefined };
  return checkFormat(format).length > 0 ? undefined : format;
}

const VERDICTS = ['good', 'no good', 'unsure'] as const;
const SIZES = ['wide', 'medium', 'close'] as const;

function readRow(cell: (column: Column) => string, line: number): Result<TakeRow> {
  const at = Date.parse(cell('at'));
  const format = readFormat(cell('rate'));
  const issues: Issue[] = [];
  const wrong = (column: Column, fix: string) => issues.push(issue('take-row', `Row ${line}: “${cell(column).slice(0, 40)}” is no ${column} of a take.`, fix, { path: [line, column] }));
  if (!Number.isFinite(at)) wrong('at', 'Write the moment as 2026-12-01T18:30:00Z.');
  if (format === undefined) wrong('rate', 'Write frames a second, with DF for drop-frame: 25 or 29.97 DF.');
  const frameOf = (column: 'start' | 'end'): number | null => {
    if (cell(column) === '' || format === null || format === undefined) return null;
    const read = readTimecode(cell(column), format);
    if (read.ok) return read.value;
    issues.push(...read.error.map((found): Issue => ({ ...found, message: `Row ${line}: ${found.message}`, path: [line, column] })));
    return null;
  };
  const [startFrame, endFrame] = [frameOf('start'), frameOf('end')];
  const number = Number(cell('take') || '1');
  if (!Number.isInteger(number) || number < 1) wrong('take', 'Number takes from 1.');
  const verdict = VERDICTS.find((known) => known === (cell('verdict') || 'unsure'));
  if (verdict === undefined) wrong('verdict', `Write ${VERDICTS.join(', ')}.`);
  const size = cell('size') === '' ? null : SIZES.find((known) => known === cell('size'));
  if (size === undefined) wrong('size', `Write ${SIZES.join(', ')}, or nothing.`);
  if (issues.length > 0 || verdict === undefined || size === undefined || format === undefined) return fail(issues);
  return ok({
    id: cell('id'), at: instant(at), author: cell('author'), taskId: cell('task id') || null, taskName: cell('task'), shotId: cell('shot id') || null, shotName: cell('shot'), cameraName: cell('camera'),
    text: cell('note'),
    take: {
      cameraId: cell('camera id') || null, format, startFrame, endFrame, number, size, verdict, media: cell('media'),
      isReenacted: cell('re-enacted') === 'yes', reenactmentLabel: cell('label'), isFailedAttempt: cell('failed attempt') === 'yes',
    },
  });
}

/**
 * Reads takes from a table with the same heads, in any order; heads that are missing count as empty, all but `at`.
 * Fails with the issues of all rows: `take-row`, those of timecode and of the table itself.
 */
export function readTakesCsv(text: string): Result<readonly TakeRow[]> {
  const table = readCsv(text);
  if (!table.ok) return table;
  const [head = [], ...body] = table.value;
  const places = new Map(head.map((name, index) => [name.trim().toLowerCase(), index]));
  if (!places.has('at')) return fail([issue('take-head', 'The table has no column “at”.', `Its first row names the columns: ${HEAD.join(', ')}.`, { path: [1] })]);
  const rows = body.map((cells, index) => readRow((column) => (cells[places.get(column) ?? -1] ?? '').trim(), index + 2));
  const issues = rows.flatMap((row) => (row.ok ? [] : row.error));
  return issues.length > 0 ? fail(issues) : ok(rows.flatMap((row) => (row.ok ? [row.value] : [])));
}

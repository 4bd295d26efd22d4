import { createHash } from 'node:crypto';
import { readTakesCsv, type TakeRow } from '@/lib/exchange';
import { writeTimecode } from '@/lib/footage';
import { fail, issue, ok, type Issue, type Result } from '@/lib/result';
import type { CommandContext } from './context';
import { logEntry } from './log-entry';

const LONGEST = 5_000_000;
const MOST_ROWS = 5000;

export interface ImportedTakes {
  readonly added: number;
  /** Rows that are in the log already. */
  readonly known: number;
  readonly warnings: readonly Issue[];
}

/** The row's own id, or one made of what it says, so that the same table twice adds nothing. */
function idOf({ id, ...row }: TakeRow): string {
  return id.length >= 8 && id.length <= 64 ? id : `csv-${createHash('sha256').update(JSON.stringify([id, row])).digest('hex').slice(0, 32)}`;
}

function labelOf(frame: number | null, { take }: TakeRow): string {
  return frame === null || take.format === null ? '' : writeTimecode(frame, take.format);
}

/**
 * Adds the takes of a table to the log. Nothing is added when a row cannot be read.
 * Fails with `import-too-long`, the issues of the table, and like `logEntry`.
 */
export async function importTakes(context: CommandContext, seriesId: string, text: string, author: string): Promise<Result<ImportedTakes>> {
  if (text.length > LONGEST) return fail([issue('import-too-long', `The table has ${Math.round(text.length / 1_000_000)} MB; at most ${LONGEST / 1_000_000} MB are read.`, 'Split it.', { path: ['file'] })]);
  const rows = readTakesCsv(text);
  if (!rows.ok) return rows;
  if (rows.value.length > MOST_ROWS) return fail([issue('import-too-long', `The table has ${rows.value.length} takes; at most ${MOST_ROWS} are read at once.`, 'Split it.', { path: ['file'] })]);
  let [added, known] = [0, 0];
  const warnings: Issue[] = [];
  for (const row of rows.value) {
    const { format: _format, startFrame, endFrame, ...take } = row.take;
    const logged = await logEntry(context, seriesId, {
      id: idOf(row), kind: 'take', deviceAt: row.at, sentAt: context.now(), device: 'table', author: row.author || author, taskId: row.taskId, shotId: row.shotId, text: row.text,
      take: { ...take, start: labelOf(startFrame, row), end: labelOf(endFrame, row) },
    });
    if (!logged.ok) return logged;
    if (logged.value.isNew) added += 1;
    else known += 1;
    warnings.push(...logged.value.warnings);
  }
  return ok({ added, known, warnings });
}

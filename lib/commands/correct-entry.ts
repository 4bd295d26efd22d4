import { framesPerDay, writeTimecode, type LogEntry, type TakeFacts } from '@/lib/footage';
import { fail, issue, type Result } from '@/lib/result';
import type { CommandContext } from './context';
import { logEntry, type Logged } from './log-entry';

/** What a person corrects; the rest of the entry stays. */
export interface Correction {
  readonly text?: string;
  readonly verdict?: string;
  readonly start?: string;
  readonly end?: string;
  readonly reenactmentLabel?: string;
}

async function findToReplace(context: CommandContext, seriesId: string, entryId: string): Promise<Result<LogEntry>> {
  const entry = await context.storage.getLogEntry(seriesId, entryId);
  return entry === null ? fail([issue('no-such-entry', 'This entry is not in the log.', 'Load the page again.')]) : { ok: true, value: entry };
}

/** The label of a frame; the end of a day is written as midnight. */
function labelOf(frame: number | null, format: TakeFacts['format']): string {
  return frame === null || format === null ? '' : writeTimecode(frame % framesPerDay(format), format);
}

/** An entry as a device would send it, for the place of an earlier one. */
function replacing(context: CommandContext, entry: LogEntry, author: string): Readonly<Record<string, unknown>> {
  const { number: _number, at, receivedAt: _receivedAt, deviceAt: _deviceAt, take, ...rest } = entry;
  const now = context.now();
  if (take === null) return { ...rest, id: context.newId(), deviceAt: at, sentAt: now, author, device: 'desk', supersedes: entry.id };
  const { format, startFrame, endFrame, ...facts } = take;
  return { ...rest, id: context.newId(), deviceAt: at, sentAt: now, author, device: 'desk', supersedes: entry.id, take: { ...facts, start: labelOf(startFrame, format), end: labelOf(endFrame, format) } };
}

/** Puts a corrected entry in the place of an earlier one; both stay in the log. Fails with `no-such-entry` and like {@link logEntry}. */
export async function correctEntry(context: CommandContext, seriesId: string, entryId: string, author: string, correction: Correction): Promise<Result<Logged>> {
  const found = await findToReplace(context, seriesId, entryId);
  if (!found.ok) return found;
  const sent = replacing(context, found.value, author);
  const { text, ...take } = correction;
  return logEntry(context, seriesId, {
    ...sent, ...(text === undefined ? {} : { text }),
    ...(found.value.take === null ? {} : { take: { ...Object(sent['take']), ...take } }),
  });
}

/** Takes an entry back; it stays in the log and counts no more. Fails like {@link correctEntry}. */
export async function withdrawEntry(context: CommandContext, seriesId: string, entryId: string, author: string, reason = ''): Promise<Result<Logged>> {
  const found = await findToReplace(context, seriesId, entryId);
  if (!found.ok) return found;
  return logEntry(context, seriesId, { ...replacing(context, found.value, author), text: reason, isWithdrawn: true });
}

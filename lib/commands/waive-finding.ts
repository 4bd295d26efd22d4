import { fail, issue, type Result } from '@/lib/result';
import type { CommandContext } from './context';
import { logEntry, type Logged } from './log-entry';

/** Lets a finding of a check pass, with the reason, in the log. Fails with `waiver-without-reason` and like `logEntry`. */
export async function waiveFinding(context: CommandContext, seriesId: string, waiver: { readonly check: number; readonly key: string }, author: string, reason: string): Promise<Result<Logged>> {
  if (reason.trim() === '') return fail([issue('waiver-without-reason', 'A finding is let pass only with a reason.', 'Write why it does no harm.', { path: ['reason'] })]);
  const now = context.now();
  return logEntry(context, seriesId, { id: context.newId(), kind: 'waiver', deviceAt: now, sentAt: now, device: 'desk', author, text: reason, waiver });
}

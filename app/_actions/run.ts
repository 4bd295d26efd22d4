import { revalidatePath } from 'next/cache';
import { openContext, type CommandContext } from '@/lib/commands';
import type { Issue, Result } from '@/lib/result';
import type { Outcome } from './outcome';

/** What every command that writes answers. */
interface Written {
  readonly change: { readonly number: number; readonly label: string };
  readonly warnings?: readonly Issue[];
}

/** Runs a command with the clock and storage of this moment and has the pages of the series rendered again. */
export async function runAction(
  seriesId: string,
  run: (context: CommandContext) => Promise<Result<Written>>,
): Promise<Outcome> {
  const result = await run(await openContext());
  if (!result.ok) return { ok: false, issues: result.error };
  revalidatePath(`/s/${seriesId}`, 'layout');
  revalidatePath('/');
  const { change: { number, label }, warnings = [] } = result.value;
  return { ok: true, saved: { number, label, warnings: warnings.map(({ fix, message }) => `${message} ${fix}`.trim()) } };
}

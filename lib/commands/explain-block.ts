import { explainBlock as explain, scheduleOf, type Explained } from '@/lib/plan';
import { ok, type Result } from '@/lib/result';
import type { CommandContext } from './context';
import { loadStanding } from './standing-plan';

/** The chain that holds a block of the accepted plan, and the least changes that free it. Reads only. Fails as {@link loadStanding} does. */
export async function explainBlock(ctx: CommandContext, seriesId: string, blockId: string): Promise<Result<Explained>> {
  const found = await loadStanding(ctx, seriesId);
  if (!found.ok) return found;
  const { compiled, plan } = found.value;
  return ok(explain(compiled, scheduleOf(compiled, plan), blockId));
}

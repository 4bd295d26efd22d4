import { tryBlock, type BlockTrial, type MoveTarget } from '@/lib/plan';
import type { Result } from '@/lib/result';
import type { CommandContext } from './context';
import { loadStanding } from './standing-plan';

/**
 * What it would mean to fix a block of the accepted plan at a moment, or in a session. Nothing is saved: {@link pinTask} does that.
 * Fails with what {@link loadStanding} and {@link tryBlock} fail with.
 */
export async function tryMove(ctx: CommandContext, seriesId: string, blockId: string, target: MoveTarget): Promise<Result<BlockTrial>> {
  const found = await loadStanding(ctx, seriesId);
  return found.ok ? tryBlock(found.value.compiled, found.value.standing, blockId, target) : found;
}

import type { RunBlock } from './model';

/** All runs in one, blocks in any order. */
export function joinBlocks(blocks: readonly RunBlock[]): RunBlock {
  const sorted = blocks.toSorted((a, b) => a.first - b.first);
  const count = sorted.reduce((sum, block) => sum + block.count, 0);
  const width = sorted[0] === undefined || sorted[0].count === 0 ? 0 : sorted[0].watched.length / sorted[0].count;
  const finish = new Int32Array(count);
  const watched = new Int32Array(count * width);
  const critical = new Int32Array(sorted[0]?.critical.length ?? 0);
  let at = 0;
  for (const block of sorted) {
    finish.set(block.finish, at);
    watched.set(block.watched, at * width);
    for (let i = 0; i < critical.length; i += 1) critical[i]! += block.critical[i]!;
    at += block.count;
  }
  const sum = (of: (block: RunBlock) => number) => sorted.reduce((total, block) => total + of(block), 0);
  return {
    first: sorted[0]?.first ?? 0, count, finish, watched, critical,
    criticalRuns: sum((b) => b.criticalRuns), lostShots: sum((b) => b.lostShots), spoiltCoats: sum((b) => b.spoiltCoats), missedWindows: sum((b) => b.missedWindows), retakes: sum((b) => b.retakes),
  };
}

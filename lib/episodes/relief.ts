/** What to cut or move so that an episode fits its time. */

/** One change, and the person-minutes it frees. */
export interface Relief {
  readonly kind: 'film simpler' | 'move later' | 'leave a shot out' | 'add a session';
  readonly taskId: string | null;
  /** `Film “Strip the frame” locked-off`. */
  readonly words: string;
  readonly frees: number;
}

/** Smallest sets of changes that were looked for. */
const MOST_TOGETHER = 3;
const MOST_ANSWERS = 3;

/** Sets of up to three changes, at most one a task. */
function* combine(options: readonly Relief[], from: number, most: number): Generator<readonly Relief[]> {
  for (let index = from; index < options.length; index += 1) {
    const option = options[index]!;
    yield [option];
    if (most === 1) continue;
    for (const rest of combine(options, index + 1, most - 1)) {
      if (option.taskId === null || rest.every((each) => each.taskId !== option.taskId)) yield [option, ...rest];
    }
  }
}

const frees = (set: readonly Relief[]): number => set.reduce((sum, each) => sum + each.frees, 0);

/**
 * Up to three sets of changes that free `missing` person-minutes: the fewest changes first, then those that free the least too much.
 * When three changes cannot free so much, the largest ones, one set, as far as they go. Empty when nothing is missing or nothing helps.
 */
export function findRelief(options: readonly Relief[], missing: number): readonly (readonly Relief[])[] {
  if (missing <= 0) return [];
  // Forty of the largest make ten thousand sets, a few milliseconds.
  const largest = options.filter((option) => option.frees > 0).toSorted((a, b) => b.frees - a.frees).slice(0, 40);
  const enough = [...combine(largest, 0, MOST_TOGETHER)].filter((set) => frees(set) >= missing);
  if (enough.length > 0) return enough.toSorted((a, b) => a.length - b.length || frees(a) - frees(b)).slice(0, MOST_ANSWERS);
  const used = new Set<string>();
  const all = largest.filter(({ taskId }) => {
    if (taskId === null) return true;
    if (used.has(taskId)) return false;
    used.add(taskId);
    return true;
  });
  return all.length === 0 ? [] : [all];
}

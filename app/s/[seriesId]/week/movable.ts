import type { BlockView } from '@/lib/views';

/** Where the strip says how a block is moved. */
export const MOVE_HINT_ID = 'move-hint';

/** Only unfinished work of a task can be fixed to a time. */
export function isMovable({ isDone, kind, taskId }: Pick<BlockView, 'isDone' | 'kind' | 'taskId'>): boolean {
  return kind === 'task' && !isDone && taskId !== null;
}

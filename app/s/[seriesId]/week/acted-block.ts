import type { BlockView } from '@/lib/views';
import type { ActedBlock } from './block-actions';

/** The little of a block that its actions need. */
export function pickActed({ id, kind, taskId, revision, isDone, isPinned, start, title, subject }: BlockView): ActedBlock {
  return { id, kind, taskId, revision, isDone, isPinned, start, title, subjectId: subject.id };
}

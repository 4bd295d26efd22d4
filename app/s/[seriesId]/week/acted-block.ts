import type { BlockView } from '@/lib/views';
import type { ActedBlock } from './block-actions';

/** The little of a block that its actions need. */
export function pickActed({ kind, taskId, revision, isDone, isPinned, start, title, subject }: BlockView): ActedBlock {
  return { kind, taskId, revision, isDone, isPinned, start, title, subjectId: subject.id };
}

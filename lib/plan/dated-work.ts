/** A plan as the rules of safety see it: who works on what when, and when air holds wet paint. */
import type { DatedWork } from '@/lib/safety';
import type { PlanResult } from './model';

/** No plan: nothing is dated. Paint counts as wet from the last piece of its task until it is touch dry. */
export function datedWork(result: PlanResult | null): DatedWork {
  if (result === null) return { pieces: [], wet: [] };
  const tasks = result.blocks.filter(({ kind }) => kind === 'task');
  const pieces = tasks.flatMap(({ subject, pieces: worked, crewIds }) => worked.map(({ start, end }) => ({ taskId: subject.id, personIds: crewIds, start, end })));
  const wet = result.blocks.flatMap(({ kind, subject, start, stages }) => {
    if (kind !== 'cure' || stages === null) return [];
    const laid = tasks.find((block) => block.subject.id === subject.id)?.pieces.at(-1)?.start ?? start;
    return [{ taskId: subject.id, start: laid, end: stages.touchDry }];
  });
  return { pieces, wet };
}

import { datedWork } from '@/lib/plan';
import { gatherFootage, type ChecklistMore } from '@/lib/safety';
import type { SeriesContext } from './context';

/** What a checklist looks at besides the series: the accepted plan and the log. */
export async function loadScene({ storage }: SeriesContext, seriesId: string): Promise<Required<Pick<ChecklistMore, 'work' | 'footage'>>> {
  const [plan, entries] = await Promise.all([storage.acceptedPlan(seriesId), storage.listLogEntries(seriesId, {})]);
  return { work: datedWork(plan?.result ?? null), footage: gatherFootage(entries) };
}

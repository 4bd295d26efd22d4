/** The build page: load, then compute. */
import type { SeriesDocument } from '@/lib/build';
import type { BuildView } from './build-model';
import { computeBuild } from './build-plan';
import type { ViewContext } from './context';

/** Parts and work of a series. `assembly` null: the first one's work is drawn. */
export async function viewBuild({ storage, now }: ViewContext, document: SeriesDocument, assembly: string | null, isAll: boolean): Promise<BuildView> {
  const plan = await storage.acceptedPlan(document.series.id);
  return computeBuild({ document, plan, now, assembly, isAll });
}

/** The build view: parts as threads of states, work as a graph. Pure. */
import type { SeriesDocument } from '@/lib/build';
import { dateOf, formatIsoWeek, isoWeekOf } from '@/lib/calendar';
import type { SavedPlan } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import { drawGraph } from './build-graph';
import type { BuildView } from './build-model';
import { listAssemblies } from './build-threads';
import { stampPlan } from './week-plan';

export interface BuildInput {
  readonly document: SeriesDocument;
  readonly plan: SavedPlan | null;
  readonly now: Instant;
  /** Assembly to draw; null or an unknown name: the first. */
  readonly assembly: string | null;
  readonly isAll: boolean;
}

/** Everything the build page shows. */
export function computeBuild(input: BuildInput): BuildView {
  const { document, plan, now } = input;
  const blocks = plan?.result.blocks ?? [];
  const assemblies = listAssemblies(document, blocks);
  const named = assemblies.find((one) => one.name === input.assembly) ?? assemblies[0];
  const chosen = input.isAll ? null : (named?.name ?? null);
  const stamp = stampPlan(plan, document, null);
  return {
    seriesId: document.series.id,
    seriesName: document.series.name,
    currentWeek: formatIsoWeek(isoWeekOf(dateOf(now, document.series.zone))),
    assemblies,
    chosen,
    graph: drawGraph(document, blocks, chosen),
    hasPlan: plan !== null,
    staleness: stamp?.staleness ?? null,
    planNumber: stamp?.number ?? null,
  };
}

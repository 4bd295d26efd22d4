/** What waits for a coat or an outside job. */
import { deriveOrder, findWork, isDone, type SeriesDocument, type WorkRef } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { SavedPlan } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import type { HeldWork } from './waits-model';

/** What every part of the page looks at. */
export interface Waiting {
  readonly document: SeriesDocument;
  readonly plan: SavedPlan | null;
  readonly now: Instant;
}

/** When the accepted plan begins a piece of work; null: it has no place. */
export function plannedStart({ plan }: Waiting, ref: WorkRef): Instant | null {
  const ids = ref.kind === 'task' ? [`before-shot:${ref.id}`, `task:${ref.id}`] : [`drop-off:${ref.id}`, `collection:${ref.id}`];
  const starts = (plan?.result.blocks ?? []).filter((block) => ids.includes(block.id)).map((block) => block.start);
  return starts.length === 0 ? null : starts.reduce((first, start) => (start < first ? start : first));
}

/** Unfinished work that follows, the soonest first. */
export function listHeld(waiting: Waiting, ref: WorkRef): readonly (HeldWork & { readonly start: Instant | null; readonly ref: WorkRef })[] {
  const { document } = waiting;
  const { zone } = document.series;
  const next = new Map(deriveOrder(document).filter(({ from }) => from.kind === ref.kind && from.id === ref.id).map(({ to }) => [`${to.kind} ${to.id}`, to]));
  return [...next.values()].flatMap((to) => {
    const work = findWork(document, to);
    if (work === undefined || isDone(work)) return [];
    const start = plannedStart(waiting, to);
    return [{ kind: to.kind, id: to.id, name: work.name, start, ref: to, planned: start === null ? null : formatMoment(start, zone) }];
  }).toSorted((a, b) => (a.start ?? Infinity) - (b.start ?? Infinity));
}

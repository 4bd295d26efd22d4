/** Placements of the engine as blocks: work, trips, and the waits between them. */
import type { OutsideJob, Task } from '@/lib/build';
import type { CoatMoments } from '@/lib/cure';
import type { Placement } from '@/lib/scheduling';
import { addMinutes, type Instant } from '@/lib/units';
import type { Compiled } from '../compile/compile';
import { cureOf, need, type Draft } from '../compile/draft';
import { shutAfter } from '../compile/exposure';
import { expectedReady } from '../compile/job-activities';
import { collectionActivity, dropOffActivity, isWorkshopWork, readName, taskActivity } from '../compile/names';
import { activityTitle } from '../explain/titles';
import type { Because, BlockKind, CoatStages, PlanBlock, Span } from '../model';

type WorkKind = Exclude<BlockKind, 'away' | 'cure' | 'shut'>;

const isWorkKind = (kind: string): kind is WorkKind => isWorkshopWork(kind) || kind === 'drop-off' || kind === 'collection';

/** Block of a placed activity; null for an episode's milestone. */
export function workBlock(compiled: Compiled, placement: Placement, because: readonly Because[]): PlanBlock | null {
  const { draft } = compiled;
  const { kind, id } = readName(placement.activity);
  if (!isWorkKind(kind)) return null;
  const isTask = isWorkshopWork(kind);
  const record: Task | OutsideJob = kind === 'late-work' ? (draft.lateWork.get(id)?.task ?? need(draft.tasks, id, 'task')) : isTask ? need(draft.tasks, id, 'task') : need(draft.jobs, id, 'outside job');
  return {
    id: placement.activity,
    kind,
    subject: { kind: isTask ? 'task' : 'outsideJob', id },
    title: activityTitle(draft, placement.activity),
    start: draft.clock.moment(placement.start),
    end: draft.clock.moment(placement.end),
    pieces: placement.pieces.map((piece): Span => ({ start: draft.clock.moment(piece.start), end: draft.clock.moment(piece.end) })),
    placeId: record.kind === 'task' ? record.placeId : null,
    crewIds: placement.crew.map((resource) => readName(resource).id),
    partIds: [...new Set(record.parts.map((use) => use.partId))],
    episodeId: record.episodeId,
    isPinned: record.kind === 'task' && kind === 'task' && record.pinnedStart !== null,
    stages: null,
    because,
  };
}

function waitBlock(block: Pick<PlanBlock, 'id' | 'kind' | 'subject' | 'title' | 'start' | 'end' | 'placeId' | 'partIds' | 'episodeId' | 'stages'>): PlanBlock {
  return { ...block, pieces: [{ start: block.start, end: block.end }], crewIds: [], isPinned: false, because: [] };
}

function laterOf(a: CoatMoments, b: CoatMoments): CoatMoments {
  return a.handle >= b.handle ? a : b;
}

/** The wait of the slowest coat of a task, from the end of the work until it may be handled; null without coats. */
function cureBlock(draft: Draft, task: Task, laidAt: Instant): PlanBlock | null {
  const coats = task.coats.map((coat): CoatStages => {
    const material = need(draft.materials, coat.materialId, 'material');
    return { materialId: material.id, ...cureOf(draft, task).moments(material, laidAt) };
  });
  const first = coats[0];
  if (!first) return null;
  const stages = coats.reduce<CoatStages>((slowest, coat) => (laterOf(slowest, coat) === coat ? coat : slowest), first);
  return waitBlock({
    id: `cure:${task.id}`,
    kind: 'cure',
    subject: { kind: 'task', id: task.id },
    title: `${need(draft.materials, stages.materialId, 'material').name} on ${partNames(draft, task.parts)}`,
    start: laidAt,
    end: stages.handle,
    placeId: task.placeId,
    partIds: [...new Set(task.parts.map((use) => use.partId))],
    episodeId: task.episodeId,
    stages,
  });
}

function partNames(draft: Draft, uses: Task['parts']): string {
  const names = [...new Set(uses.map((use) => need(draft.parts, use.partId, 'part').name))];
  if (names.length === 0) return 'the work';
  return names.length > 2 ? `${names.slice(0, 2).join(', ')} and ${names.length - 2} more` : names.join(' and ');
}

/** The places that share the air of a task that sprays isocyanate, from its end until it has cleared. */
function shutBlocks(draft: Draft, task: Task, sprayedAt: Instant): PlanBlock[] {
  const shut = shutAfter(draft, task);
  if (shut === null) return [];
  return draft.document.places.filter(({ airZone }) => airZone === shut.zone).map((place) => waitBlock({
    id: `shut:${task.id}:${place.id}`,
    kind: 'shut',
    subject: { kind: 'task', id: task.id },
    title: `${task.name}: isocyanate has to clear`,
    start: sprayedAt,
    end: addMinutes(sprayedAt, shut.minutes),
    placeId: place.id,
    partIds: [],
    episodeId: task.episodeId,
    stages: null,
  }));
}

function awayBlock(draft: Draft, job: OutsideJob, start: Instant, end: Instant): PlanBlock {
  const trade = need(draft.trades, job.tradeId, 'outside trade');
  return waitBlock({
    id: `away:${job.id}`,
    kind: 'away',
    subject: { kind: 'outsideJob', id: job.id },
    title: `${partNames(draft, job.parts)} at ${trade.name}`,
    start,
    end,
    placeId: null,
    partIds: [...new Set(job.parts.map((use) => use.partId))],
    episodeId: job.episodeId,
    stages: null,
  });
}

/** Every wait that the plan brings with it, and those that already run. */
export function waitBlocks(compiled: Compiled, placements: ReadonlyMap<string, Placement>): PlanBlock[] {
  const { draft } = compiled;
  const cures = draft.document.tasks.flatMap((task) => {
    const placed = placements.get(taskActivity(task.id));
    const laidAt = task.doneAt ?? (placed ? draft.clock.moment(placed.end) : null);
    return laidAt === null ? [] : [cureBlock(draft, task, laidAt), ...shutBlocks(draft, task, laidAt)];
  });
  const away = draft.document.outsideJobs.map((job) => {
    if (job.collectedAt !== null) return null;
    const dropOff = placements.get(dropOffActivity(job.id));
    const collection = placements.get(collectionActivity(job.id));
    const start = job.droppedOffAt ?? (dropOff ? draft.clock.moment(dropOff.end) : null);
    const end = collection ? draft.clock.moment(collection.start) : job.droppedOffAt === null ? null : expectedReady(draft, job);
    return start !== null && end !== null && end > start ? awayBlock(draft, job, start, end) : null;
  });
  return [...cures, ...away].filter((block): block is PlanBlock => block !== null && block.end > draft.now);
}

/** A plan's block as a page shows it: names instead of ids, words instead of minutes. */
import type { OutsideJob, PartUse, SeriesDocument, Task } from '@/lib/build';
import { formatLength, formatMoment, formatWorkLength } from '@/lib/calendar';
import { isFilmed, beforeShots, type BlockKind, type CoatStages, type PlanBlock } from '@/lib/plan';
import { MS_PER_MINUTE } from '@/lib/units';
import type { BlockPart, BlockReason, BlockView, RecordLink } from './week-model';
import { tellShotRisk } from './shot-risk';
import { formatRange } from './week-words';

/** What a block's kind is called on a page. */
const KIND_WORDS: Readonly<Record<BlockKind, string>> = {
  task: 'Work',
  'before-shot': 'Film before',
  'late-work': 'Added work',
  'drop-off': 'Drop-off',
  collection: 'Collection',
  away: 'Away',
  cure: 'Drying',
  shut: 'Stay out',
};

/** True where nobody works: the block is a wait. */
export const isWait = (kind: BlockKind): boolean => kind === 'away' || kind === 'cure' || kind === 'shut';

/** True for a trip to or from a trade. */
export const isErrand = (kind: BlockKind): boolean => kind === 'drop-off' || kind === 'collection';

/** Worked minutes of a block, or elapsed minutes of a wait. */
function blockMinutes(block: PlanBlock): number {
  const spans = isWait(block.kind) || block.pieces.length === 0 ? [block] : block.pieces;
  return spans.reduce((sum, span) => sum + (span.end - span.start) / MS_PER_MINUTE, 0);
}

/** A link to a record of any list, with a plain name where the record is gone. */
export function linkRecord(kind: string, id: string, list: readonly { readonly id: string; readonly name: string }[]): RecordLink {
  return { kind, id, name: list.find((one) => one.id === id)?.name ?? 'a removed record' };
}

/** A record's name, or what is missing in plain words: `a removed person`. */
export function nameOf(id: string, list: readonly { readonly id: string; readonly name: string }[], what: string): string {
  return list.find((one) => one.id === id)?.name ?? `a removed ${what}`;
}

function showPart(use: PartUse, document: SeriesDocument): BlockPart {
  const part = document.parts.find((one) => one.id === use.partId);
  const state = (id: string | null) => part?.states.find((one) => one.id === id)?.name ?? null;
  return { id: use.partId, name: part?.name ?? 'a removed part', from: state(use.from), to: state(use.to) };
}

/** Reasons with their moments in the series' zone. */
export function showReasons(because: PlanBlock['because'], zone: string): BlockReason[] {
  return because.map((one) => ({
    text: one.text,
    until: one.until === null ? null : formatMoment(one.until, zone),
    change: one.change,
  }));
}

/** The stages of a coat with their moments, in the order they come. */
function showStages(stages: CoatStages | null, zone: string): BlockView['stages'] {
  if (stages === null) return [];
  const { recoatUntil } = stages;
  return [
    { label: 'Touch dry', when: formatMoment(stages.touchDry, zone) },
    { label: 'Next coat from', when: formatMoment(stages.recoatFrom, zone) },
    ...(recoatUntil === null ? [] : [{ label: 'Next coat at the latest', when: formatMoment(recoatUntil, zone) }]),
    { label: 'May be handled', when: formatMoment(stages.handle, zone) },
    { label: 'Fully cured', when: formatMoment(stages.fullCure, zone) },
  ];
}

function describeWhen(block: PlanBlock, zone: string): string {
  const spans = isWait(block.kind) || block.pieces.length === 0 ? [block] : block.pieces;
  return spans.map((span) => formatRange(span.start, span.end, zone)).join(', then ');
}

const SHOT_ORDER = ['before', 'during', 'after', 'insert', 'piece to camera', 'time-lapse', 'pickup'];

function taskFields(block: PlanBlock, task: Task, document: SeriesDocument) {
  const isBefore = block.kind !== 'task';
  const isOwn = block.kind === 'before-shot';
  const ahead = beforeShots(task);
  const aheadIds = new Set(ahead.map((shot) => shot.id));
  const shots = isWait(block.kind) || block.kind === 'late-work' ? [] : task.shots.filter((shot) => aheadIds.has(shot.id) === isOwn);
  const materials = new Set(task.coats.map((coat) => nameOf(coat.materialId, document.materials, 'material')));
  return {
    layOut: isBefore ? [] : task.layOut,
    cautions: isBefore ? [] : task.cautions,
    equipment: isBefore ? [] : task.equipmentIds.map((id) => nameOf(id, document.equipment, 'piece of equipment')),
    materials: isBefore ? [] : [...materials],
    manualReference: task.manualReference,
    shots: shots
      .toSorted((a, b) => SHOT_ORDER.indexOf(a.purpose) - SHOT_ORDER.indexOf(b.purpose))
      .map((shot) => ({ purpose: shot.purpose, name: shot.name, minutes: shot.time, mustHave: shot.mustHave, risk: tellShotRisk(task, shot) })),
    coverage: task.coverage === 'none' ? null : task.coverage,
    isFilmed: isFilmed(task),
    isIrreversible: task.irreversible,
    isDone: task.doneAt !== null || (isOwn && ahead.every((shot) => shot.filmedAt !== null)),
    taskId: task.id,
    revision: task.revision,
  };
}

function jobFields(block: PlanBlock, job: OutsideJob | undefined) {
  const done = block.kind === 'drop-off' ? job?.droppedOffAt : job?.collectedAt;
  return {
    layOut: [], cautions: [], equipment: [], materials: [], manualReference: '', shots: [], coverage: null,
    isFilmed: false, isIrreversible: false, isDone: done !== null && done !== undefined, taskId: null, revision: job?.revision ?? 0,
  };
}

/** Everything a page says about a block. Records that were removed since the plan are named as such. */
export function showBlock(block: PlanBlock, document: SeriesDocument): BlockView {
  const { zone } = document.series;
  const isTask = block.subject.kind === 'task';
  const task = isTask ? document.tasks.find((one) => one.id === block.subject.id) : undefined;
  const job = isTask ? undefined : document.outsideJobs.find((one) => one.id === block.subject.id);
  const uses = (task ?? job)?.parts ?? [];
  const shown = new Set(block.partIds);
  return {
    id: block.id,
    kind: block.kind,
    title: block.title,
    label: isWait(block.kind) || block.kind === 'late-work' ? block.title : ((task ?? job)?.name ?? block.title),
    kindWord: KIND_WORDS[block.kind],
    when: describeWhen(block, zone),
    length: isWait(block.kind) ? formatLength(blockMinutes(block)) : formatWorkLength(blockMinutes(block)),
    crew: block.crewIds.map((id) => nameOf(id, document.people, 'person')),
    place: block.placeId === null ? null : nameOf(block.placeId, document.places, 'place'),
    parts: uses
      .filter((use) => shown.size === 0 || shown.has(use.partId))
      // Filming leaves a part as it is, and so does what only makes it ready for the next coat.
      .map((use) => showPart(block.kind === 'before-shot' || block.kind === 'late-work' ? { ...use, to: null } : use, document)),
    episode: block.episodeId === null ? null : linkRecord('episode', block.episodeId, document.episodes),
    because: showReasons(block.because, zone),
    stages: showStages(block.stages, zone),
    ...(task ? taskFields(block, task, document) : jobFields(block, job)),
    isPinned: task ? task.pinnedStart !== null && block.kind === 'task' : block.isPinned,
    subject: linkRecord(block.subject.kind, block.subject.id, isTask ? document.tasks : document.outsideJobs),
    start: block.start,
    end: block.end,
  };
}

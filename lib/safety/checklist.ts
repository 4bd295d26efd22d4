/** The checklist of an episode: computed from what it shows, evidenced line by line, opened again by a change. */
import type { SeriesDocument, Task } from '@/lib/build';
import type { Issue } from '@/lib/result';
import { findCombinations, type DatedWork } from './combinations';
import type { ChecklistItem, ItemDraft, ItemState } from './checklist-item';
import { linesOfCombinations, linesOfDeparture, linesOfEquipment, linesOfHazard, standingLines, type ShownHazard } from './checklist-lines';
import { findHazards } from './find-hazards';
import { fingerprintOf } from './fingerprint';
import { listHazards } from './library-in-force';
import { latestEvidence } from './statements';
import { factsOfTask } from './task-facts';

export interface Checklist {
  readonly episodeId: string;
  readonly hazards: readonly ShownHazard[];
  readonly items: readonly ChecklistItem[];
  /** Tasks of the episode that are filmed. */
  readonly tasks: readonly Task[];
}

/** Tasks that viewers see: of the episode, with coverage or shots. */
function listShownTasks(document: SeriesDocument, episodeId: string): readonly Task[] {
  return document.tasks.filter((task) => task.episodeId === episodeId && (task.coverage !== 'none' || task.shots.length > 0));
}

function listShownHazards(document: SeriesDocument, tasks: readonly Task[]): readonly ShownHazard[] {
  const hazards = listHazards(document);
  const found = tasks.flatMap((task) => findHazards(document, task, hazards).found.map((one) => ({ ...one, task })));
  return hazards.flatMap((hazard) => {
    const here = found.filter((one) => one.hazard.id === hazard.id);
    return here.length === 0 ? [] : [{ hazard, tasks: here.map(({ task }) => task), isDeferred: here.some(({ isDeferred }) => isDeferred) }];
  });
}

/** What of a task a signature stands on: what is done, with what, and how it is filmed. Order, dates and names do not matter. */
function basisOfTask(document: SeriesDocument, task: Task): unknown {
  const { id, category, placeId, parts, crew, equipmentIds, coats, coverage, shots, hazards, irreversible } = task;
  return { id, category, placeId, parts, crew, equipmentIds, coats, coverage, shots, hazards, irreversible, facts: factsOfTask(document, task).map(({ fact }) => fact) };
}

function judgeState(item: ItemDraft, fingerprint: string, signed: ChecklistItem['signed']): ItemState {
  if (signed === null || signed.about.sort !== 'evidence' || signed.about.evidence.kind === 'withdrawn') return 'open';
  if (signed.about.fingerprint !== fingerprint) return 'reopened';
  // An incomplete line cannot be called done.
  if (item.issues.length > 0) return 'reopened';
  return signed.about.evidence.kind === 'take' ? 'evidenced' : 'excepted';
}

/** Lines in the order of the page: deferrals and combinations first. */
function orderLines(lines: readonly ItemDraft[]): readonly ItemDraft[] {
  const first = lines.filter(({ kind }) => kind === 'deferral' || kind === 'combination');
  return [...first, ...lines.filter((line) => !first.includes(line))];
}

export interface ChecklistMore {
  /** The dated side of the plan; without it combinations come from the tasks alone. */
  readonly work?: DatedWork;
  /** What is known of takes, by task; any change in it opens the lines of that task again. */
  readonly footage?: Readonly<Record<string, readonly string[]>>;
  /** Combinations of the whole series, where the caller has them already. */
  readonly combinations?: readonly Issue[];
}

/** The checklist of an episode. Signatures count while their fingerprint is that of now. */
export function buildChecklist(document: SeriesDocument, episodeId: string, { work, footage = {}, combinations }: ChecklistMore = {}): Checklist {
  const tasks = listShownTasks(document, episodeId);
  const hazards = listShownHazards(document, tasks);
  const lines = orderLines([
    ...hazards.flatMap(linesOfHazard), ...linesOfEquipment(hazards), ...tasks.flatMap(linesOfDeparture),
    ...linesOfCombinations(tasks.length === 0 ? [] : (combinations ?? findCombinations(document, work)), tasks), ...standingLines(tasks, hazards),
  ]);
  const bases = new Map(tasks.map((task) => [task.id, { task: basisOfTask(document, task), footage: footage[task.id] ?? [] }]));
  const items = lines.map((line): ChecklistItem => {
    const { basis, ...item } = line;
    const fingerprint = fingerprintOf({ id: line.id, basis, tasks: line.taskIds.map((id) => bases.get(id)) });
    const signed = latestEvidence(document, episodeId, line.id);
    return { ...item, fingerprint, signed, state: judgeState(line, fingerprint, signed) };
  });
  return { episodeId, hazards, items, tasks };
}

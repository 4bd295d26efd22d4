/** The checklist of an episode: computed from what it shows, evidenced line by line, opened again by a change. */
import type { SeriesDocument, Task } from '@/lib/build';
import type { Issue } from '@/lib/result';
import { findCombinations, type DatedWork } from './combinations';
import type { ChecklistItem, ItemDraft } from './checklist-item';
import { linesOfCombinations, linesOfDeparture, linesOfEquipment, linesOfHazard, type ShownHazard } from './checklist-lines';
import { standingLines } from './checklist-records';
import { findHazards } from './find-hazards';
import { fingerprintOf } from './fingerprint';
import { faultOfTake, NO_FOOTAGE, type Footage } from './footage';
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

/** What of a task a signature stands on: what is done and with what. Order, dates and names do not matter. */
function basisOfTask(document: SeriesDocument, task: Task): unknown {
  const { id, category, placeId, parts, crew, equipmentIds, coats, hazards, irreversible } = task;
  return { id, category, placeId, parts, crew, equipmentIds, coats, hazards, irreversible, facts: factsOfTask(document, task).map(({ fact }) => fact) };
}

/** How it is filmed. That a shot is in the can by now changes nothing of what it shows. */
function basisOfShots({ id, coverage, shots }: Task): unknown {
  return { id, coverage, shots: shots.map(({ filmedAt: _filmedAt, ...shot }) => shot) };
}

/** What may have changed since a signature, in the order of the parts of a fingerprint. */
const CHANGED = ['what this line asks for has changed since', 'the task has changed since', 'the shots or the way it is filmed have changed since'] as const;

function sayChanged(signed: string, now: string): string {
  const [before, after] = [signed.split('.'), now.split('.')];
  return CHANGED.filter((_, index) => before[index] !== after[index]).join('; ');
}

function judgeState(item: ItemDraft, fingerprint: string, signed: ChecklistItem['signed'], footage: Footage): Pick<ChecklistItem, 'state' | 'why'> {
  if (item.recorded !== null) return { state: 'recorded', why: null };
  if (signed === null || signed.about.sort !== 'evidence' || signed.about.evidence.kind === 'withdrawn') return { state: 'open', why: null };
  const { evidence } = signed.about;
  // An incomplete line cannot be called done.
  const [incomplete] = item.issues;
  const fault = evidence.kind === 'take' && evidence.entryId !== undefined ? faultOfTake(footage, evidence.entryId, item.taskIds) : null;
  const why = signed.about.fingerprint === fingerprint ? (fault ?? (incomplete === undefined ? null : 'it is not complete')) : sayChanged(signed.about.fingerprint, fingerprint);
  if (why !== null) return { state: 'reopened', why };
  return { state: evidence.kind === 'take' ? 'evidenced' : 'excepted', why: null };
}

/** Lines in the order of the page: deferrals and combinations first. */
function orderLines(lines: readonly ItemDraft[]): readonly ItemDraft[] {
  const first = lines.filter(({ kind }) => kind === 'deferral' || kind === 'combination');
  return [...first, ...lines.filter((line) => !first.includes(line))];
}

export interface ChecklistMore {
  /** The dated side of the plan; without it combinations come from the tasks alone. */
  readonly work?: DatedWork;
  /** The log. A line that stands on a take of it is open again when the take no longer counts, and without a log. */
  readonly footage?: Footage;
  /** Combinations of the whole series, where the caller has them already. */
  readonly combinations?: readonly Issue[];
}

/** The checklist of an episode. Signatures count while their fingerprint is that of now. */
export function buildChecklist(document: SeriesDocument, episodeId: string, { work, footage = NO_FOOTAGE, combinations }: ChecklistMore = {}): Checklist {
  const tasks = listShownTasks(document, episodeId);
  const hazards = listShownHazards(document, tasks);
  const episode = document.episodes.find(({ id }) => id === episodeId);
  const lines = orderLines([
    ...hazards.flatMap(linesOfHazard), ...linesOfEquipment(hazards), ...tasks.flatMap(linesOfDeparture),
    ...linesOfCombinations(tasks.length === 0 ? [] : (combinations ?? findCombinations(document, work)), tasks), ...(episode === undefined ? [] : standingLines(document, episode, tasks, hazards)),
  ]);
  const bases = new Map(tasks.map((task) => [task.id, { task: basisOfTask(document, task), shots: basisOfShots(task) }]));
  const items = lines.map((line): ChecklistItem => {
    const { basis, ...item } = line;
    const shown = line.taskIds.map((id) => bases.get(id));
    const fingerprint = [{ id: line.id, basis }, shown.map((one) => one?.task), shown.map((one) => one?.shots)].map(fingerprintOf).join('.');
    const signed = latestEvidence(document, episodeId, line.id);
    return { ...item, fingerprint, signed, ...judgeState(line, fingerprint, signed, footage) };
  });
  return { episodeId, hazards, items, tasks };
}

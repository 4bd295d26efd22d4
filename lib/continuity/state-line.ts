/** The state and the whereabouts of each part over time: what is planned, what was done, what somebody saw. */
import type { OutsideJob, Part, SeriesDocument, Task } from '@/lib/build';
import { instant, type Instant } from '@/lib/units';
import type { LogEntry, Whereabouts } from '@/lib/takes';
import type { PlannedBlock } from './planned-block';

/** Where a point of a line comes from. */
export interface PointSource {
  readonly kind: 'start' | 'task' | 'outsideJob' | 'log';
  readonly id: string;
  /** `Strip the frame`, or the words of the log entry. */
  readonly name: string;
}

export interface StatePoint {
  readonly at: Instant;
  /** The state from here on; null: only the whereabouts change. */
  readonly stateId: string | null;
  /** Where the part is from here on; null: unchanged. */
  readonly whereabouts: Whereabouts | null;
  readonly source: PointSource;
  readonly isPlanned: boolean;
  /** 0 for the first way through the states; one more for each redo. */
  readonly branch: number;
}

/** A part that went back to an earlier state: the way done before stays on record, a new one starts here. */
export interface Redo {
  readonly branch: number;
  readonly at: Instant;
  /** The state it was in, and the one it went back to. */
  readonly fromId: string;
  readonly toId: string;
  readonly source: PointSource;
}

export interface StateLine {
  readonly partId: string;
  /** In the order of time; observed points first, planned ones after them. */
  readonly points: readonly StatePoint[];
  /** How many of them are observed. */
  readonly observed: number;
  readonly redos: readonly Redo[];
}

/** Before everything. */
export const BEGINNING: Instant = instant(-8.64e15);

type Loose = Omit<StatePoint, 'branch'>;

function add(points: Map<string, Loose[]>, partId: string, point: Loose): void {
  points.get(partId)?.push(point);
}

function addStart(points: Map<string, Loose[]>, part: Part): void {
  const [first] = part.states;
  add(points, part.id, {
    at: BEGINNING, stateId: first?.id ?? null, whereabouts: null, isPlanned: false, source: { kind: 'start', id: part.id, name: 'the start of the series' },
  });
}

function addTask(points: Map<string, Loose[]>, task: Task, at: Instant, isPlanned: boolean): void {
  for (const use of task.parts) {
    add(points, use.partId, {
      at, stateId: use.to, whereabouts: { kind: 'place', id: task.placeId }, isPlanned, source: { kind: 'task', id: task.id, name: task.name },
    });
  }
}

function addJob(points: Map<string, Loose[]>, job: OutsideJob, when: { readonly out: Instant | null; readonly back: Instant | null; readonly isPlanned: boolean }): void {
  const source: PointSource = { kind: 'outsideJob', id: job.id, name: job.name };
  for (const use of job.parts) {
    if (when.out !== null) add(points, use.partId, { at: when.out, stateId: null, whereabouts: { kind: 'trade', id: job.tradeId }, isPlanned: when.isPlanned, source });
    if (when.back !== null) add(points, use.partId, { at: when.back, stateId: use.to, whereabouts: { kind: 'store', id: null }, isPlanned: when.isPlanned, source });
  }
}

function addBlocks(points: Map<string, Loose[]>, document: SeriesDocument, blocks: readonly PlannedBlock[]): void {
  const tasks = new Map(document.tasks.map((task) => [task.id, task]));
  const jobs = new Map(document.outsideJobs.map((job) => [job.id, job]));
  for (const { kind, subject, start, end } of blocks) {
    const task = kind === 'task' ? tasks.get(subject.id) : undefined;
    const job = kind === 'away' ? jobs.get(subject.id) : undefined;
    if (task?.doneAt === null) addTask(points, task, end, true);
    if (job?.collectedAt === null) addJob(points, job, { out: job.droppedOffAt === null ? start : null, back: end, isPlanned: true });
  }
}

function addEntries(points: Map<string, Loose[]>, entries: readonly LogEntry[]): void {
  for (const entry of entries) {
    for (const { partId, stateId, whereabouts } of entry.observed) {
      add(points, partId, { at: entry.at, stateId, whereabouts, isPlanned: false, source: { kind: 'log', id: entry.id, name: entry.text || `${entry.kind} by ${entry.author}` } });
    }
  }
}

/** Counts the ways through the states: going back starts another one. */
function withBranches(part: Part, loose: readonly Loose[]): Pick<StateLine, 'points' | 'redos'> {
  const places = new Map(part.states.map((state, index) => [state.id, index]));
  const redos: Redo[] = [];
  let [branch, highest, last] = [0, -1, ''];
  const points = loose.map((point): StatePoint => {
    const place = point.stateId === null ? undefined : places.get(point.stateId);
    if (point.stateId === null || place === undefined) return { ...point, branch };
    if (place < highest) {
      branch += 1;
      redos.push({ branch, at: point.at, fromId: last, toId: point.stateId, source: point.source });
      highest = place;
    }
    highest = Math.max(highest, place);
    last = point.stateId;
    return { ...point, branch };
  });
  return { points, redos };
}

/**
 * One line a part. `entries` are those that stand (see `standingEntries`); `blocks` those of the plan that counts, none without one.
 * Work that is done and what the log saw are observed; blocks of work that is not done yet are planned.
 */
export function drawStateLines(document: SeriesDocument, blocks: readonly PlannedBlock[], entries: readonly LogEntry[]): readonly StateLine[] {
  const points = new Map<string, Loose[]>(document.parts.map((part) => [part.id, []]));
  for (const part of document.parts) addStart(points, part);
  for (const task of document.tasks) if (task.doneAt !== null) addTask(points, task, task.doneAt, false);
  for (const job of document.outsideJobs) addJob(points, job, { out: job.droppedOffAt, back: job.collectedAt, isPlanned: false });
  addEntries(points, entries);
  addBlocks(points, document, blocks);
  return document.parts.map((part) => {
    const own = (points.get(part.id) ?? []).toSorted((a, b) => Number(a.isPlanned) - Number(b.isPlanned) || a.at - b.at);
    return { partId: part.id, observed: own.filter(({ isPlanned }) => !isPlanned).length, ...withBranches(part, own) };
  });
}

/** Which points count: what was observed, or the plan as well. */
export type Evidence = 'observed' | 'planned';

/** Index after the last point of points[from, to) at or before a moment; they are in the order of time. */
function countUntil(points: readonly StatePoint[], at: Instant, from: number, to: number): number {
  let [low, high] = [from, to];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (points[middle]!.at <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The last point at or before a moment that says something of the kind asked for. */
function lastBefore({ points, observed }: StateLine, at: Instant, evidence: Evidence, says: 'stateId' | 'whereabouts'): StatePoint | null {
  const last = (from: number, to: number): StatePoint | null => {
    for (let index = countUntil(points, at, from, to) - 1; index >= from; index -= 1) if (points[index]![says] !== null) return points[index]!;
    return null;
  };
  const seen = last(0, observed);
  const planned = evidence === 'planned' ? last(observed, points.length) : null;
  return planned !== null && (seen === null || planned.at >= seen.at) ? planned : seen;
}

/** The point that gives the part's state at a moment; null when none is known. */
export function stateAt(line: StateLine, at: Instant, evidence: Evidence): StatePoint | null {
  return lastBefore(line, at, evidence, 'stateId');
}

/** The point that says where the part is at a moment; null: where the record says. */
export function whereaboutsAt(line: StateLine, at: Instant, evidence: Evidence): StatePoint | null {
  return lastBefore(line, at, evidence, 'whereabouts');
}

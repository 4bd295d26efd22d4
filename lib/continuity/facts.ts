/** What the checks look at, put in order once. */
import type { OutsideJob, Part, Place, SeriesDocument, Session, Task } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import { findDisagreements, type Disagreement } from './disagreements';
import { isTake, standingEntries, type LogEntry, type Look, type TakeEntry } from './log-entry';
import type { PlannedBlock } from './planned-block';
import { drawStateLines, type StateLine } from './state-line';

/** A piece of the series as viewers see it: a segment where there are any, else the work of an episode. */
export interface AiredPiece {
  readonly id: string;
  readonly name: string;
  readonly episodeId: string | null;
  readonly taskIds: readonly string[];
  /** Goes back on purpose, and says so. */
  readonly isFlashback: boolean;
}

export interface FactsInput {
  readonly document: SeriesDocument;
  /** Of the plan that counts; empty without one. */
  readonly blocks: readonly PlannedBlock[];
  /** The whole log. */
  readonly entries: readonly LogEntry[];
  /** In the order of airing; left out: the tasks of each episode, in their order. */
  readonly airing?: readonly AiredPiece[];
  readonly now: Instant;
}

export interface Facts {
  readonly document: SeriesDocument;
  readonly now: Instant;
  readonly blocks: readonly PlannedBlock[];
  /** Those that stand, by time. */
  readonly entries: readonly LogEntry[];
  readonly takes: readonly TakeEntry[];
  readonly airing: readonly AiredPiece[];
  readonly lines: readonly StateLine[];
  readonly disagreements: readonly Disagreement[];
  readonly tasks: ReadonlyMap<string, Task>;
  readonly jobs: ReadonlyMap<string, OutsideJob>;
  readonly parts: ReadonlyMap<string, Part>;
  readonly places: ReadonlyMap<string, Place>;
  readonly lineOf: ReadonlyMap<string, StateLine>;
  readonly takesOfTask: ReadonlyMap<string, readonly TakeEntry[]>;
  readonly blocksOfTask: ReadonlyMap<string, readonly PlannedBlock[]>;
  readonly looks: readonly LogEntry[];
}

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string | null): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    if (key === null) continue;
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

const byId = <T extends { readonly id: string }>(records: readonly T[]): ReadonlyMap<string, T> => new Map(records.map((record) => [record.id, record]));

/** The tasks of each episode, in the order of release. */
function airingOfTasks({ episodes, tasks }: SeriesDocument): readonly AiredPiece[] {
  const ofEpisode = groupBy(tasks, ({ episodeId }) => episodeId);
  return episodes.toSorted((a, b) => a.releaseDate.localeCompare(b.releaseDate) || a.order - b.order)
    .flatMap((episode) => (ofEpisode.get(episode.id) ?? []).map((task): AiredPiece => ({ id: task.id, name: task.name, episodeId: episode.id, taskIds: [task.id], isFlashback: false })));
}

export function gatherFacts(input: FactsInput): Facts {
  const { document, blocks, now } = input;
  const entries = standingEntries(input.entries);
  const takes = entries.filter(isTake);
  const lines = drawStateLines(document, blocks, entries);
  return {
    document, now, blocks, entries, takes, lines,
    airing: input.airing ?? airingOfTasks(document),
    disagreements: findDisagreements(document, lines, now),
    tasks: byId(document.tasks), jobs: byId(document.outsideJobs), parts: byId(document.parts), places: byId(document.places),
    lineOf: new Map(lines.map((line) => [line.partId, line])),
    takesOfTask: groupBy(takes, ({ taskId }) => taskId),
    blocksOfTask: groupBy(blocks, ({ kind, subject }) => (kind === 'task' && subject.kind === 'task' ? subject.id : null)),
    looks: entries.filter(({ look }) => look !== null),
  };
}

/** Moments already in words: many findings speak of the same ones. */
const said = new WeakMap<Facts, Map<Instant, string>>();

export function sayAt(facts: Facts, at: Instant): string {
  const words = said.get(facts) ?? new Map<Instant, string>();
  said.set(facts, words);
  const known = words.get(at) ?? formatMoment(at, facts.document.series.zone);
  words.set(at, known);
  return known;
}

export const nameOfState = (part: Part | undefined, stateId: string | null): string => part?.states.find(({ id }) => id === stateId)?.name ?? 'an unknown state';

/** Longest time for which a noted look holds without being noted again. */
const LOOK_HOLDS_MS = 12 * 3_600_000;

/** The look at a take: its own, else the last one noted in the hours before it. */
export function lookAt(facts: Facts, take: TakeEntry): Look | null {
  if (take.look !== null) return take.look;
  let [low, high] = [0, facts.looks.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (facts.looks[middle]!.at <= take.at) low = middle + 1;
    else high = middle;
  }
  const last = facts.looks[low - 1];
  return last !== undefined && take.at - last.at <= LOOK_HOLDS_MS ? last.look : null;
}

export const overlaps = (a: { readonly start: number; readonly end: number }, b: { readonly start: number; readonly end: number }): boolean => a.start < b.end && b.start < a.end;

/** The session that a span lies in. */
export function sessionOf(facts: Facts, span: { readonly start: number; readonly end: number }, placeId: string | null): Session | undefined {
  return facts.document.sessions.find((session) => session.start <= span.start && span.end <= session.end && (placeId === null || session.placeIds.includes(placeId)));
}

/** Blocks of tasks, each with its task, by time. */
export function taskBlocks(facts: Facts): readonly { readonly block: PlannedBlock; readonly task: Task }[] {
  return facts.blocks.flatMap((block) => {
    const task = block.kind === 'task' ? facts.tasks.get(block.subject.id) : undefined;
    return task === undefined ? [] : [{ block, task }];
  }).toSorted((a, b) => a.block.start - b.block.start);
}

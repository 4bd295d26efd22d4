/** What the checks look at, put in order once. */
import type { Material, OutsideJob, Part, Place, SeriesDocument, Session, Task, Trade } from '@/lib/build';
import { formatMoment, type CivilDate } from '@/lib/calendar';
import type { CoatClock } from '@/lib/cure';
import type { LearnedRatio } from '@/lib/outwork';
import type { Instant } from '@/lib/units';
import { airingOf, type AiredPiece } from './airing';
import { findDisagreements, type Disagreement } from './disagreements';
import { isTake, standingEntries, type LogEntry, type Look, type TakeEntry } from '@/lib/takes';
import { once } from './once';
import type { PlannedBlock } from './planned-block';
import { drawStateLines, type StateLine } from './state-line';

export interface FactsInput {
  readonly document: SeriesDocument;
  /** Of the plan that counts; empty without one. */
  readonly blocks: readonly PlannedBlock[];
  /** The whole log. */
  readonly entries: readonly LogEntry[];
  readonly now: Instant;
  /** Left out: nothing is known of it, and the checks that need it find nothing. */
  readonly known?: KnownElsewhere;
}

/** What other parts of the program work out, and some checks look at. */
export interface KnownElsewhere {
  /** A material in the air of some places by the hour. null: no weather is recorded, so nothing is known of its damp. */
  readonly coatOf: ((airZone: string, material: Material) => CoatClock) | null;
  /** How long a trade takes against its quotes; null: no job is finished yet. */
  readonly ratioOf: (trade: Trade) => LearnedRatio | null;
  /** The first day on which each episode can be out by the plan; null: not known. */
  readonly feasibleOn: ReadonlyMap<string, CivilDate | null>;
}

export interface Facts {
  readonly document: SeriesDocument;
  readonly now: Instant;
  readonly blocks: readonly PlannedBlock[];
  /** Those that stand, by time. */
  readonly entries: readonly LogEntry[];
  readonly takes: readonly TakeEntry[];
  /** In the order of airing. */
  readonly airing: readonly AiredPiece[];
  readonly known: KnownElsewhere | null;
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

export function gatherFacts(input: FactsInput): Facts {
  const { document, blocks, now } = input;
  const entries = standingEntries(input.entries);
  const takes = entries.filter(isTake);
  const lines = drawStateLines(document, blocks, entries);
  return {
    document, now, blocks, entries, takes, lines,
    airing: airingOf(document), known: input.known ?? null,
    disagreements: findDisagreements(document, lines, now),
    tasks: byId(document.tasks), jobs: byId(document.outsideJobs), parts: byId(document.parts), places: byId(document.places),
    lineOf: new Map(lines.map((line) => [line.partId, line])),
    takesOfTask: groupBy(takes, ({ taskId }) => taskId),
    blocksOfTask: groupBy(blocks, ({ kind, subject }) => (kind === 'task' && subject.kind === 'task' ? subject.id : null)),
    looks: entries.filter(({ look }) => look !== null),
  };
}

/** Moments already in words: many findings speak of the same ones. */
const saidOf = once((_facts: Facts): Map<Instant, string> => new Map());

export function sayAt(facts: Facts, at: Instant): string {
  const words = saidOf(facts);
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

/** Takes of a piece that are not failed, by time. */
export function takesOfPiece(facts: Facts, piece: AiredPiece): readonly TakeEntry[] {
  return piece.taskIds.flatMap((id) => facts.takesOfTask.get(id) ?? []).filter(({ take }) => take.verdict !== 'no good').toSorted((a, b) => a.at - b.at);
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

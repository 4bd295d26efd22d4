/** What should be filmed once more, and the sessions in which the parts are in the right state for it. */
import type { Session, Task } from '@/lib/build';
import { filmedLater, findGaps, sayPicture } from './coverage';
import type { Facts } from './facts';
import { nameOfState } from './facts';
import type { CheckedFinding } from './run-checks';
import { stateAt, whereaboutsAt } from './state-line';

export interface NeededPart {
  readonly partId: string;
  /** null: any state will do. */
  readonly stateId: string | null;
}

export interface Pickup {
  readonly key: string;
  readonly task: Task;
  readonly what: string;
  readonly why: string;
  readonly parts: readonly NeededPart[];
  /** Recording sessions to come in which every part is here and in that state from beginning to end. */
  readonly sessions: readonly Session[];
  /** Why there is no session, empty where there are some. */
  readonly whyNone: string;
}

type Wish = Pick<Pickup, 'key' | 'task' | 'what' | 'why' | 'parts'>;

/** The result shows parts as the task leaves them, the rest as it finds them. */
function partsFor(task: Task, when: 'before' | 'after'): readonly NeededPart[] {
  return task.parts.map(({ partId, from, to }) => ({ partId, stateId: when === 'after' ? (to ?? from) : from }));
}

function fromGaps(facts: Facts): readonly Wish[] {
  return findGaps(facts).flatMap(({ task, missing }) => missing.map((what) => ({
    key: `gap/${task.id}/${what}`, task, what: sayPicture(what, task), why: 'no good take of it', parts: partsFor(task, 'after'),
  })));
}

/** Shots all of whose takes failed. */
function fromFailedTakes(facts: Facts): readonly Wish[] {
  return facts.document.tasks.flatMap((task) => {
    const takes = facts.takesOfTask.get(task.id) ?? [];
    return task.shots.flatMap((shot) => {
      const own = takes.filter(({ shotId }) => shotId === shot.id);
      const last = own.at(-1);
      if (last === undefined || own.some(({ take }) => take.verdict !== 'no good')) return [];
      return [{
        key: `failed/${shot.id}`, task, what: `“${shot.name}”`, parts: partsFor(task, shot.purpose === 'after' ? 'after' : 'before'),
        why: `${own.length === 1 ? 'its only take is' : `all ${own.length} takes are`} no good${last.text === '' ? '' : `: ${last.text}`}`,
      }];
    });
  });
}

/** Neighbours that do not match want a picture in between. */
function fromFindings(facts: Facts, findings: readonly CheckedFinding[]): readonly Wish[] {
  return findings.filter(({ check, waived }) => check === 18 && waived === null).flatMap(({ key, subjects, message }) => {
    const task = facts.tasks.get(subjects[0]?.id ?? '');
    return task === undefined ? [] : [{ key: `check/18/${key}`, task, what: `an insert ahead of “${task.name}”`, why: message, parts: partsFor(task, 'before') }];
  });
}

function fits(facts: Facts, session: Session, { partId, stateId }: NeededPart): boolean {
  const line = facts.lineOf.get(partId);
  if (line === undefined) return false;
  const isHere = whereaboutsAt(line, session.start, 'planned')?.whereabouts?.kind !== 'trade';
  const moves = line.points.some(({ at, whereabouts }) => at > session.start && at < session.end && whereabouts?.kind === 'trade');
  if (!isHere || moves || stateId === null) return isHere && !moves;
  const changes = line.points.some((point) => point.at > session.start && point.at < session.end && point.stateId !== null && point.stateId !== stateId);
  return !changes && stateAt(line, session.start, 'planned')?.stateId === stateId;
}

function sayWhyNone(facts: Facts, parts: readonly NeededPart[], open: readonly Session[]): string {
  if (open.length === 0) return 'No recording session is to come. Add one.';
  const states = parts.map(({ partId, stateId }) => {
    const part = facts.parts.get(partId);
    return stateId === null ? `“${part?.name ?? ''}” here` : `“${part?.name ?? ''}” ${nameOfState(part, stateId)}`;
  });
  return `In no recording session to come is ${states.join(' and ')}. Show another picture, or re-enact it with a label.`;
}

/** All pickups with their sessions; a picture that is planned as a pickup already, or filmed as one, is left out. */
export function findPickups(facts: Facts, findings: readonly CheckedFinding[]): readonly Pickup[] {
  const open = facts.document.sessions.filter((session) => session.isRecording && session.start >= facts.now).toSorted((a, b) => a.start - b.start);
  const planned = new Set(facts.document.tasks.filter(({ doneAt, shots }) => doneAt === null && shots.some(({ purpose }) => purpose === 'pickup')).map(({ name }) => name));
  return [...fromGaps(facts), ...fromFailedTakes(facts), ...fromFindings(facts, findings)].filter((wish) => !planned.has(pickupName(wish)) && !filmedLater(facts).has(wish.what)).map((wish) => {
    const sessions = open.filter((session) => wish.parts.every((part) => fits(facts, session, part)));
    return { ...wish, sessions, whyNone: sessions.length > 0 ? '' : sayWhyNone(facts, wish.parts, open) };
  });
}

/** Name of the task that films a pickup. @example pickupName({ what: 'a wide picture of “Strip”' }) // 'Pickup: a wide picture of “Strip”' */
export function pickupName({ what }: Pick<Pickup, 'what'>): string {
  return `Pickup: ${what}`.slice(0, 200);
}

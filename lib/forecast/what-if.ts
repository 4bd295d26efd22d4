/** What may break a week, each as an edit of the series. Nothing is saved here. */
import type { Episode, OutsideJob, SeriesDocument, Session, Task } from '@/lib/build';
import { addDays, dateOf, formatDay, isoWeekOf, mondayOf, type CivilDate } from '@/lib/calendar';
import type { ReadingRows } from '@/lib/cure';
import { beforeShots, shotsAhead, type PlanResult } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import { MINUTES_PER_DAY, MS_PER_MINUTE, minutes, type Instant } from '@/lib/units';
import { later, MOST_SLIP_DAYS, readSlip, SLIPS_OFFERED, slipTarget, tellDays } from './trade-slip';

export const WHAT_IF_KINDS = [
  'trade-slips', 'heater-broken', 'helper-away', 'before-shot-missed', 'coat-bloomed', 'card-lost', 'daylight-gone', 'ran-double', 'sponsor-moves', 'week-off',
] as const;

export type WhatIfKind = (typeof WHAT_IF_KINDS)[number];

/** One thing that happened, to one record or to the week. */
export interface WhatIf {
  readonly kind: WhatIfKind;
  /** Id of what it happened to; empty where the whole week is meant. */
  readonly target: string;
}

export interface Target {
  readonly id: string;
  readonly name: string;
}

/** The series as it stands, the plan that counts, and the moment. */
export interface Situation {
  readonly document: SeriesDocument;
  readonly plan: PlanResult | null;
  readonly now: Instant;
  /** Rows of the loggers; left out: none. */
  readonly readings?: ReadingRows;
}

interface Spec {
  readonly title: string;
  /** What it could have happened to, the likeliest first. */
  readonly targets: (at: Situation) => readonly Target[];
  /** Words when there is nothing it could happen to. */
  readonly nothing: string;
  readonly apply: (at: Situation, target: string) => Result<SeriesDocument>;
  readonly tell: (at: Situation, name: string, target: string) => string;
}

const WEEK = 7 * MINUTES_PER_DAY * MS_PER_MINUTE;
const REPLACEMENT_MINUTES = 45;

const none: readonly Target[] = [{ id: '', name: 'this week' }];
const today = ({ document, now }: Situation): CivilDate => dateOf(now, document.series.zone);
const isThisWeek = ({ now }: Situation, session: Session): boolean => session.end > now && session.start < now + WEEK;
const named = (rows: readonly { readonly id: string; readonly name: string }[]): Target[] => rows.map(({ id, name }) => ({ id, name }));

/** Behind the id of somebody who is away from Monday on. */
const NEXT_WEEK = '@next-week';

/** Everybody, from today on or from Monday. */
function absences(at: Situation): readonly Target[] {
  const monday = addDays(mondayOf(isoWeekOf(today(at))), 7);
  const people = named(at.document.people.toReversed());
  return [...people, ...people.map(({ id, name }) => ({ id: `${id}${NEXT_WEEK}`, name: `${name}, from ${formatDay(monday)},` }))];
}

/** Open work in the order of the plan; what the plan does not have comes last. */
function inPlanOrder<T extends { readonly id: string }>(rows: readonly T[], { plan }: Situation): T[] {
  const starts = new Map<string, number>();
  for (const block of plan?.blocks ?? []) if (!starts.has(block.subject.id)) starts.set(block.subject.id, block.start);
  return rows.toSorted((a, b) => (starts.get(a.id) ?? Infinity) - (starts.get(b.id) ?? Infinity));
}

const openTasks = (at: Situation): Task[] => inPlanOrder(at.document.tasks.filter((task) => task.doneAt === null), at);
const openJobs = (at: Situation): OutsideJob[] => inPlanOrder(at.document.outsideJobs.filter((job) => job.collectedAt === null), at);
const openEpisodes = ({ document }: Situation): Episode[] => document.episodes.filter((episode) => episode.status === 'planned').toSorted((a, b) => a.releaseDate.localeCompare(b.releaseDate));
const doneFilmed = ({ document }: Situation): Task[] => document.tasks
  .filter((task) => task.doneAt !== null && task.shots.length > 0).toSorted((a, b) => (b.doneAt ?? 0) - (a.doneAt ?? 0));

function replaced<T extends { readonly id: string }>(rows: readonly T[], id: string, change: (row: T) => T): T[] {
  return rows.map((row) => (row.id === id ? change(row) : row));
}

function finished(task: Task): Result<never> {
  return fail([issue('what-if-finished', `${task.name} is done, so this cannot happen to it any more.`, 'Choose work that is still open, or reopen the task first.', { subjects: [{ kind: 'task', id: task.id, name: task.name }] })]);
}

function withTask({ document }: Situation, id: string, change: (task: Task) => Result<SeriesDocument>): Result<SeriesDocument> {
  const task = document.tasks.find((one) => one.id === id);
  if (task === undefined) return fail([issue('what-if-gone', 'What this was about is no longer in the series.', 'Choose something else.')]);
  return change(task);
}

/** A task that stands in for what was lost: filmed again, without work on the parts' states. */
function standIn({ document }: Situation, task: Task, word: string, length: number): Task {
  const order = document.tasks.reduce((next, one) => Math.max(next, one.order + 1), 0);
  return {
    ...task, id: `${task.id}-again-${document.changeNumber + 1}`, revision: 1, order, name: `${word}: ${task.name}`.slice(0, 120), category: 'filming',
    parts: task.parts.map((use) => ({ partId: use.partId, from: use.to ?? use.from, to: null })),
    effort: { low: minutes(length * 0.7), likely: minutes(length), high: minutes(length * 1.6) }, inOneGo: true, irreversible: false,
    crew: [{ skill: null, count: 1 }], coats: [], coverage: 'inserts and teaching', shots: [], isDusty: false, isNoisy: false, cautions: [], pinnedStart: null, doneAt: null,
    conditions: { minimumTemperature: null, needsDaylight: false },
  };
}

const added = ({ document }: Situation, task: Task): SeriesDocument => ({ ...document, tasks: [...document.tasks, task] });

function slip(at: Situation, target: string): Result<SeriesDocument> {
  const { days, id } = readSlip(target);
  if (Number.isNaN(days)) return fail([issue('what-if-days', `A trade can be 1 to ${MOST_SLIP_DAYS} working days late, and "${target.slice(id.length + 1)}" is no such number.`, 'Choose 2, 5 or 10 working days.')]);
  const job = at.document.outsideJobs.find((one) => one.id === id);
  if (job === undefined || job.collectedAt !== null) {
    return fail([issue('what-if-finished', `${job?.name ?? 'This outside job'} is back already, so it cannot slip.`, 'Choose a job that is still open.')]);
  }
  return ok({ ...at.document, outsideJobs: replaced(at.document.outsideJobs, id, (one) => later(one, days)) });
}

const mapSessions = (at: Situation, change: (session: Session) => Session): Result<SeriesDocument> =>
  ok({ ...at.document, sessions: at.document.sessions.map((session) => (isThisWeek(at, session) ? change(session) : session)) });

function missShot(at: Situation, id: string): Result<SeriesDocument> {
  return withTask(at, id, (task) => {
    if (!task.irreversible) return fail([issue('what-if-reversible', `${task.name} can be done again, so its before-shot is not lost.`, 'Choose a step that cannot be undone.')]);
    const lost = new Set(beforeShots(task).map((shot) => shot.id));
    const without: Task = { ...task, shots: task.shots.filter((shot) => !lost.has(shot.id)), doneAt: task.doneAt ?? at.now };
    const document = { ...at.document, tasks: replaced(at.document.tasks, id, () => without) };
    return ok(added({ ...at, document }, standIn(at, task, 'Re-enact the before', REPLACEMENT_MINUTES)));
  });
}

function bloom(at: Situation, id: string): Result<SeriesDocument> {
  return withTask(at, id, (task) => {
    const twice = { low: minutes(task.effort.low * 2), likely: minutes(task.effort.likely * 2), high: minutes(task.effort.high * 2) };
    // A laid coat comes off and is laid again; one not laid yet is expected to need a second go.
    return ok({ ...at.document, tasks: replaced(at.document.tasks, id, (one) => ({ ...one, doneAt: null, effort: twice, inOneGo: false })) });
  });
}

function loseCard(at: Situation, id: string): Result<SeriesDocument> {
  return withTask(at, id, (task) => {
    if (task.doneAt === null) return fail([issue('what-if-not-filmed', `${task.name} is not filmed yet, so no card of it can be lost.`, 'Choose work that is done.')]);
    const length = Math.max(15, task.shots.filter((shot) => shot.mustHave || task.shots.length === 1).reduce((sum, shot) => sum + shot.time, 0));
    return ok(added(at, standIn(at, task, 'Film again', length)));
  });
}

/** Each of the ten in one place: words, what it may happen to, what it changes. */
export const WHAT_IFS: Readonly<Record<WhatIfKind, Spec>> = {
  'trade-slips': {
    title: 'An outside trade is late', targets: (at) => named(openJobs(at)), nothing: 'No outside job is open.', apply: slip,
    tell: (_at, name, target) => `${name} comes back ${tellDays(readSlip(target).days)} later`,
  },
  'heater-broken': {
    title: 'The heater is broken', targets: () => none, nothing: '', tell: () => 'No heating for seven days',
    apply: (at) => mapSessions(at, (session) => ({ ...session, heating: null })),
  },
  'helper-away': {
    title: 'Somebody is away for a week', targets: absences, nothing: 'Nobody is in the series.',
    tell: (_at, name) => `${name} is away for seven days`,
    apply: (at, target) => {
      const isNext = target.endsWith(NEXT_WEEK);
      const from = isNext ? addDays(mondayOf(isoWeekOf(today(at))), 7) : today(at);
      const personId = isNext ? target.slice(0, -NEXT_WEEK.length) : target;
      return ok({ ...at.document, people: replaced(at.document.people, personId, (person) => ({ ...person, away: [...person.away, { from, to: addDays(from, 6), why: 'What if' }] })) });
    },
  },
  'before-shot-missed': {
    title: 'A before-shot was missed', targets: (at) => named(openTasks(at).filter((task) => task.irreversible && shotsAhead(task).length > 0)),
    nothing: 'No step ahead needs a before-shot.', tell: (_at, name) => `${name} was done before its before-shots were filmed`, apply: missShot,
  },
  'coat-bloomed': {
    title: 'A coat bloomed and comes off', targets: (at) => named([...at.document.tasks.filter((task) => task.doneAt !== null && task.coats.length > 0), ...openTasks(at).filter((task) => task.coats.length > 0)]),
    nothing: 'No coat is planned.', tell: (_at, name) => `${name} has to be taken off and laid again`, apply: bloom,
  },
  'card-lost': {
    title: 'A card is lost', targets: (at) => named(doneFilmed(at)), nothing: 'Nothing has been filmed yet, so no card can be lost.',
    tell: (_at, name) => `The footage of ${name} is lost`, apply: loseCard,
  },
  'daylight-gone': {
    title: 'There is no daylight', targets: () => none, nothing: '', tell: () => 'No daylight for seven days',
    apply: (at) => mapSessions(at, (session) => ({ ...session, hasDaylight: false })),
  },
  'ran-double': {
    title: 'A step takes twice as long', targets: (at) => named(openTasks(at)), nothing: 'No task is open.', tell: (_at, name) => `${name} takes twice as long`,
    apply: (at, id) => withTask(at, id, (task) => (task.doneAt !== null ? finished(task) : ok({
      ...at.document,
      tasks: replaced(at.document.tasks, id, (one) => ({ ...one, inOneGo: false, effort: { low: minutes(one.effort.low * 2), likely: minutes(one.effort.likely * 2), high: minutes(one.effort.high * 2) } })),
    }))),
  },
  'sponsor-moves': {
    title: 'A sponsor wants it a week sooner', targets: (at) => named(openEpisodes(at).slice(1)), nothing: 'No later episode is planned.',
    tell: (_at, name) => `${name} has to be out a week sooner`,
    apply: (at, id) => ok({ ...at.document, episodes: replaced(at.document.episodes, id, (episode) => ({ ...episode, releaseDate: addDays(episode.releaseDate, -7), isEvergreen: false })) }),
  },
  'week-off': {
    title: 'We take a week off', targets: () => none, nothing: '', tell: (at) => `No session until ${formatDay(addDays(today(at), 7))}`,
    apply: (at) => ok({ ...at.document, sessions: at.document.sessions.filter((session) => !(session.start >= at.now && session.start < at.now + WEEK)) }),
  },
};

export function isWhatIfKind(value: string): value is WhatIfKind {
  return Object.hasOwn(WHAT_IFS, value);
}

/** The target that is meant, the likeliest one when none is named. Null: there is nothing it could happen to. */
export function findTarget(at: Situation, { kind, target }: WhatIf): Target | null {
  const targets = WHAT_IFS[kind].targets(at);
  const meant = kind === 'trade-slips' ? readSlip(target).id : target;
  const found = targets.find(({ id }) => id === meant);
  return found === undefined ? (target === '' ? (targets[0] ?? null) : null) : { ...found, id: target };
}

/** How much of it there may be, for the same record: targets with their words. Empty: it has no size. */
export function listSizes({ kind, target }: WhatIf): readonly Target[] {
  if (kind !== 'trade-slips' || target === '') return [];
  const { id } = readSlip(target);
  return SLIPS_OFFERED.map((days) => ({ id: slipTarget(id, days), name: tellDays(days) }));
}

export interface Happened {
  readonly document: SeriesDocument;
  /** Sentences, one for each thing. */
  readonly words: readonly string[];
}

/**
 * The series after everything that happened, one after the other.
 * Fails with `what-if-nothing`, `what-if-finished`, `what-if-gone` or another reason why it cannot happen.
 */
export function applyWhatIfs(at: Situation, whatIfs: readonly WhatIf[]): Result<Happened> {
  let { document } = at;
  const words: string[] = [];
  for (const whatIf of whatIfs) {
    const spec = WHAT_IFS[whatIf.kind];
    const here = { ...at, document };
    const target = findTarget(here, whatIf);
    if (target === null && whatIf.target === '') return fail([issue('what-if-nothing', spec.nothing, 'Choose another what-if.')]);
    // Named but not among the likely ones: the edit itself says why not.
    const id = target?.id ?? whatIf.target;
    const applied = spec.apply(here, id);
    if (!applied.ok) return applied;
    document = applied.value;
    words.push(spec.tell(here, target?.name ?? '', id));
  }
  return ok({ document, words });
}

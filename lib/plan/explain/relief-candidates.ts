/** Small changes that might free a block, each as the problem it would make. Whether they do is worked out elsewhere. */
import { isAttending, type SeriesDocument, type Session } from '@/lib/build';
import { formatMoment } from '@/lib/calendar';
import type { Problem, Reason } from '@/lib/scheduling';
import { addMinutes } from '@/lib/units';
import { compilePlan, type Compiled } from '../compile/compile';
import { cureOf, need } from '../compile/draft';
import { readName } from '../compile/names';
import { heatCaution } from './heater-words';
import { STAGE_WORDS } from './lag-words';
import { activityTitle } from './titles';

/** A change and how much it asks of people; smaller is smaller. Our choice. */
export interface Candidate {
  readonly text: string;
  readonly size: number;
  readonly problem: Problem;
  /** Work that gives way. */
  readonly without: readonly string[];
}

/** Extra minutes of a session, where more time is tried. */
const EXTRA = 60;

/** The problem of the same plan on another document; the same problem where that cannot be planned. */
export const withDocument = ({ draft, problem }: Compiled, document: SeriesDocument): Problem => {
  const { now, previousBlocks, readings, lateFor } = draft;
  const compiled = compilePlan({ document, now, previousBlocks, ...(readings === undefined ? {} : { readings }), ...(lateFor === undefined ? {} : { lateFor }) });
  return compiled.ok ? compiled.value.problem : problem;
};

const withSession = (document: SeriesDocument, changed: Session): SeriesDocument => ({ ...document, sessions: document.sessions.map((one) => (one.id === changed.id ? changed : one)) });

/** Heat for a coat that dries. */
export function heatCoat(compiled: Compiled, reason: Reason): readonly Candidate[] {
  if (reason.fact.kind !== 'lag-min') return [];
  const { fact: { lag: lagId }, until } = reason;
  const { draft, problem } = compiled;
  const why = draft.lagReasons.get(lagId);
  if (why?.kind !== 'coat') return [];
  const task = need(draft.tasks, why.taskId, 'task');
  const material = need(draft.materials, why.materialId, 'material');
  const { length, warm } = cureOf(draft, task).tell(material, why.stage, draft.clock.moment(until));
  if (warm.length >= length) return [];
  const lags = problem.lags.map((lag) => (lag.id === lagId ? { ...lag, min: { kind: 'elapsed', minutes: Math.ceil(warm.length) } as const } : lag));
  return [{ text: `Keep ${material.name} at ${warm.at} °C until it is ${STAGE_WORDS[why.stage]}${heatCaution(draft, need(draft.places, task.placeId, 'place').airZone, material)} (rule of thumb; the data sheet comes first)`, size: 2, problem: { ...problem, lags }, without: [] }];
}

/** One working day less at an outside trade. */
export function hurryTrade(compiled: Compiled, reason: Reason): readonly Candidate[] {
  if (reason.fact.kind !== 'lag-min') return [];
  const { draft } = compiled;
  const why = draft.lagReasons.get(reason.fact.lag);
  if (why?.kind !== 'away' || why.days < 2) return [];
  const { document } = draft;
  const outsideJobs = document.outsideJobs.map((job) => (job.id === why.jobId ? { ...job, quote: { low: Math.max(1, job.quote.low - 1), likely: Math.max(1, job.quote.likely - 1), high: Math.max(1, job.quote.high - 1) } } : job));
  return [{ text: `Collect ${need(draft.jobs, why.jobId, 'outside job').name} a working day earlier`, size: 3, problem: withDocument(compiled, { ...document, outsideJobs }), without: [] }];
}

/** The slack of a session for one person. */
function fillUp(compiled: Compiled, reason: Reason): readonly Candidate[] {
  if (reason.fact.kind !== 'budget') return [];
  const { budget } = reason.fact;
  const { draft, problem } = compiled;
  const why = draft.budgetReasons.get(budget);
  if (why?.kind !== 'fill') return [];
  const { people, series, sessions } = draft.document;
  const session = sessions.find(({ id }) => id === why.sessionId);
  const budgets = (problem.budgets ?? []).map((one) => (one.id === budget ? { ...one, limit: one.within.end - one.within.start } : one));
  const who = people.find(({ id }) => id === why.personId)?.name ?? 'somebody';
  const when = session === undefined ? '' : ` ${formatMoment(session.start, series.zone)}`;
  return [{ text: `Book ${who} for the whole session${when}, with nothing in reserve`, size: 1, problem: { ...problem, budgets }, without: [] }];
}

/** What stands in the way comes after it. */
function giveWay({ draft, problem }: Compiled, reason: Reason): readonly Candidate[] {
  if (!('blockers' in reason.fact)) return [];
  const pinned = new Set(problem.activities.filter(({ pin }) => pin !== undefined).map(({ id }) => id));
  return reason.activities.slice(0, 2).map((id) => ({
    text: pinned.has(id) ? `Take the pin out of “${activityTitle(draft, id)}” and do it later` : `Do “${activityTitle(draft, id)}” later`,
    size: 4, problem, without: [id],
  }));
}

/** The last session before the block: an hour longer, or with one more person. */
function stretchSession(compiled: Compiled, blockStart: number): readonly Candidate[] {
  const { draft } = compiled;
  const { document } = draft;
  const { zone } = document.series;
  const session = document.sessions.filter((one) => one.end > draft.now && draft.clock.up(one.end) <= blockStart).toSorted((a, b) => b.end - a.end)[0];
  if (session === undefined) return [];
  const when = formatMoment(session.start, zone);
  const end = addMinutes(session.end, EXTRA);
  const isFree = !document.sessions.some((other) => other.id !== session.id && other.start < end && session.start < other.end);
  const missing = document.people.find((person) => !session.crewIds.includes(person.id) && isAttending(person, { ...session, crewIds: [person.id] }, zone));
  return [
    ...(isFree ? [{ text: `Stay an hour longer in the session of ${when}`, size: session.crewIds.length, problem: withDocument(compiled, withSession(document, { ...session, end })), without: [] }] : []),
    ...(missing === undefined ? [] : [{ text: `Bring ${missing.name} into the session of ${when}`, size: 3, problem: withDocument(compiled, withSession(document, { ...session, crewIds: [...session.crewIds, missing.id] })), without: [] }]),
  ];
}

/** Another place of the same kind of work, where its own is full. */
function moveElsewhere(compiled: Compiled, reason: Reason, blockId: string): readonly Candidate[] {
  if (reason.fact.kind !== 'resource' || readName(reason.fact.resource).kind !== 'place') return [];
  const { document } = compiled.draft;
  const own = document.tasks.find(({ id }) => id === readName(blockId).id);
  const other = document.places.find((place) => own !== undefined && place.id !== own.placeId && place.airZone === compiled.draft.places.get(own.placeId)?.airZone);
  if (own === undefined || other === undefined) return [];
  const tasks = document.tasks.map((task) => (task.id === own.id ? { ...task, placeId: other.id } : task));
  return [{ text: `Do it at ${other.name}`, size: 2, problem: withDocument(compiled, { ...document, tasks }), without: [] }];
}

/** Every change worth trying for a block, in no order. At most a handful of them compile the plan again. */
export function listCandidates(compiled: Compiled, reasons: readonly Reason[], blockId: string, blockStart: number): readonly Candidate[] {
  const each = reasons.slice(0, 3).flatMap((reason) => [
    ...heatCoat(compiled, reason), ...hurryTrade(compiled, reason), ...fillUp(compiled, reason), ...giveWay(compiled, reason), ...moveElsewhere(compiled, reason, blockId),
  ]);
  const isAboutTime = reasons.slice(0, 2).some(({ fact }) => fact.kind === 'crew' || fact.kind === 'calendar' || fact.kind === 'budget' || fact.kind === 'release');
  return isAboutTime ? [...each, ...stretchSession(compiled, blockStart)] : each;
}

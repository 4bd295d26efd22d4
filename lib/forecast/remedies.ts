/** Small changes that may put a broken week right, each of a kind of its own, as edits of the series. */
import type { SeriesDocument, Session } from '@/lib/build';
import { addDays, dateOf, formatDay, formatMoment, instantOf, wallOf } from '@/lib/calendar';
import type { EpisodeOutlook } from '@/lib/plan';
import { addMinutes, celsius, minutes, minutesBetween, type Instant } from '@/lib/units';

export const REMEDY_KINDS = ['add-session', 'longer-sessions', 'fuller-sessions', 'express', 'more-hands', 'heat', 'drop-extras', 'swap-episodes', 'later-release'] as const;

export type RemedyKind = (typeof REMEDY_KINDS)[number];

export interface Remedy {
  readonly kind: RemedyKind;
  /** What is done, in one sentence without a full stop. */
  readonly text: string;
  readonly document: SeriesDocument;
  /** How much it asks of people; smaller is smaller. Our choice: hours of crew time, or what is felt like so many. */
  readonly size: number;
}

/** Where things stand after what happened. */
export interface Trouble {
  readonly document: SeriesDocument;
  readonly now: Instant;
  readonly episodes: readonly EpisodeOutlook[];
}

const ahead = ({ document, now }: Trouble): Session[] => document.sessions.filter((session) => session.start > now).toSorted((a, b) => a.start - b.start);
const hours = (session: Session): number => minutesBetween(session.start, session.end) / 60;
const put = (document: SeriesDocument, changed: readonly Session[]): SeriesDocument => {
  const next = new Map(changed.map((session) => [session.id, session]));
  return { ...document, sessions: document.sessions.map((session) => next.get(session.id) ?? session) };
};
const overlaps = (a: Session, b: Session): boolean => a.start < b.end && b.start < a.end;

/** The episode that is latest against its due moment; one with no date at all comes first. */
function worst({ episodes }: Trouble): EpisodeOutlook | null {
  return episodes.filter((one) => one.late > 0 || one.recordedBy === null).toSorted((a, b) => (a.recordedBy === null ? 1 : 0) - (b.recordedBy === null ? 1 : 0) || b.late - a.late)[0] ?? null;
}

function addSession(trouble: Trouble): Remedy | null {
  const { document } = trouble;
  const { zone } = document.series;
  const pattern = ahead(trouble).find((session) => session.isRecording) ?? ahead(trouble)[0];
  if (pattern === undefined) return null;
  const wall = wallOf(pattern.start, zone);
  for (let days = 1; days <= 9; days += 1) {
    const start = instantOf(addDays(dateOf(pattern.start, zone), days), wall.time, zone);
    const order = document.sessions.reduce((next, session) => Math.max(next, session.order + 1), 0);
    const session: Session = { ...pattern, id: `session-more-${document.changeNumber + 1}`, revision: 1, order, name: `Extra: ${pattern.name}`.slice(0, 120), start, end: addMinutes(start, minutesBetween(pattern.start, pattern.end)) };
    if (document.sessions.some((other) => overlaps(other, session))) continue;
    return { kind: 'add-session', text: `Add a session ${formatMoment(start, zone)}`, document: { ...document, sessions: [...document.sessions, session] }, size: hours(session) * session.crewIds.length };
  }
  return null;
}

function longerSessions(trouble: Trouble): Remedy | null {
  const { document } = trouble;
  const next = ahead(trouble).slice(0, 3);
  const longer = next.map((session) => ({ ...session, end: addMinutes(session.end, 60) })).filter((session) => !document.sessions.some((other) => other.id !== session.id && overlaps(other, session)));
  if (longer.length === 0) return null;
  const crew = longer.reduce((sum, session) => sum + session.crewIds.length, 0);
  return { kind: 'longer-sessions', text: `Stay an hour longer in the next ${longer.length === 1 ? 'session' : `${longer.length} sessions`}`, document: put(document, longer), size: crew };
}

function fullerSessions({ document }: Trouble): Remedy | null {
  const { fillLimit } = document.series;
  if (fillLimit >= 0.85) return null;
  return { kind: 'fuller-sessions', text: `Book ${Math.round(85)} % of each session instead of ${Math.round(fillLimit * 100)} %, with less in reserve`, document: { ...document, series: { ...document.series, fillLimit: 0.85 } }, size: 6 };
}

function express(trouble: Trouble): Remedy | null {
  const { document } = trouble;
  const job = document.outsideJobs.filter((one) => one.collectedAt === null && (one.promisedFor !== null || one.quote.likely > 2)).toSorted((a, b) => b.quote.likely - a.quote.likely)
    .find((one) => worst(trouble) === null || one.episodeId === worst(trouble)?.episodeId) ?? document.outsideJobs.find((one) => one.collectedAt === null && one.quote.likely > 2);
  if (job === undefined) return null;
  const sooner = job.promisedFor !== null
    ? { ...job, promisedFor: addDays(job.promisedFor, -3) }
    : { ...job, quote: { low: Math.max(1, job.quote.low - 2), likely: Math.max(1, job.quote.likely - 2), high: Math.max(1, job.quote.high - 2) } };
  return {
    kind: 'express', text: `Ask for ${job.name} two working days sooner`, size: 3,
    document: { ...document, outsideJobs: document.outsideJobs.map((one) => (one.id === job.id ? sooner : one)) },
  };
}

function moreHands(trouble: Trouble): Remedy | null {
  const { document } = trouble;
  const { zone } = document.series;
  const next = ahead(trouble).slice(0, 6);
  const isAway = (person: (typeof document.people)[number], session: Session) => person.away.some((span) => span.from <= dateOf(session.start, zone) && dateOf(session.start, zone) <= span.to);
  for (const person of document.people) {
    const missing = next.filter((session) => !session.crewIds.includes(person.id) && !isAway(person, session) && !document.sessions.some((other) => other.id !== session.id && other.crewIds.includes(person.id) && overlaps(other, session))).slice(0, 2);
    if (missing.length === 0) continue;
    return {
      kind: 'more-hands', text: `Ask ${person.name} to come ${missing.map((session) => formatMoment(session.start, zone)).join(' and ')}`, size: missing.reduce((sum, session) => sum + hours(session), 0),
      document: put(document, missing.map((session) => ({ ...session, crewIds: [...session.crewIds, person.id] }))),
    };
  }
  return null;
}

function heat(trouble: Trouble): Remedy | null {
  const cold = ahead(trouble).filter((session) => session.heating === null).slice(0, 4);
  if (cold.length === 0) return null;
  return { kind: 'heat', text: `Heat the next ${cold.length} unheated sessions to 18 °C with a borrowed heater`, document: put(trouble.document, cold.map((session) => ({ ...session, heating: celsius(18) }))), size: 2 * cold.length };
}

function dropExtras(trouble: Trouble): Remedy | null {
  const { document } = trouble;
  const late = worst(trouble);
  const episode = document.episodes.find((one) => one.id === late?.episodeId);
  if (episode === undefined) return null;
  let saved = 0;
  const tasks = document.tasks.map((task) => {
    if (task.episodeId !== episode.id || task.doneAt !== null || task.shots.every((shot) => shot.mustHave)) return task;
    saved += task.shots.filter((shot) => !shot.mustHave).reduce((sum, shot) => sum + shot.time, 0);
    return { ...task, shots: task.shots.filter((shot) => shot.mustHave) };
  });
  if (saved === 0) return null;
  return { kind: 'drop-extras', text: `Film only the must-have shots of ${episode.name}, ${minutes(saved)} min less`, document: { ...document, tasks }, size: saved / 30 };
}

function swapEpisodes(trouble: Trouble): Remedy | null {
  const { document, episodes } = trouble;
  const late = document.episodes.find((one) => one.id === worst(trouble)?.episodeId);
  if (late === undefined) return null;
  const dates = new Map(episodes.map((one) => [one.episodeId, one]));
  const other = document.episodes.find((one) => one.status === 'planned' && one.isEvergreen && one.releaseDate > late.releaseDate && (dates.get(one.id)?.recordedBy ?? Infinity) <= (dates.get(late.id)?.shootDue ?? 0));
  if (other === undefined) return null;
  const swapped = document.episodes.map((one) => (one.id === late.id ? { ...one, releaseDate: other.releaseDate } : one.id === other.id ? { ...one, releaseDate: late.releaseDate } : one));
  return { kind: 'swap-episodes', text: `Air ${other.name} in place of ${late.name}, and the other way round`, document: { ...document, episodes: swapped }, size: 2 };
}

function laterRelease(trouble: Trouble): Remedy | null {
  const { document } = trouble;
  const late = document.episodes.find((one) => one.id === worst(trouble)?.episodeId);
  if (late === undefined) return null;
  const releaseDate = addDays(late.releaseDate, document.series.cadenceDays);
  return {
    kind: 'later-release', text: `Release ${late.name} on ${formatDay(releaseDate)}, ${document.series.cadenceDays} days later`, size: 8,
    document: { ...document, episodes: document.episodes.map((one) => (one.id === late.id ? { ...one, releaseDate } : one)) },
  };
}

const MAKERS: Readonly<Record<RemedyKind, (trouble: Trouble) => Remedy | null>> = {
  'add-session': addSession, 'longer-sessions': longerSessions, 'fuller-sessions': fullerSessions, express, 'more-hands': moreHands, heat, 'drop-extras': dropExtras,
  'swap-episodes': swapEpisodes, 'later-release': laterRelease,
};

export function isRemedyKind(value: string): value is RemedyKind {
  return Object.hasOwn(MAKERS, value);
}

/** The change of one kind, null where it has nothing to take hold of. */
export const makeRemedy = (kind: RemedyKind, trouble: Trouble): Remedy | null => MAKERS[kind](trouble);

/** Every change that could be made, at most one of a kind. */
export function listRemedies(trouble: Trouble): Remedy[] {
  return REMEDY_KINDS.map((kind) => makeRemedy(kind, trouble)).filter((remedy) => remedy !== null);
}

/** Sessions that would give work a place: longer ones, with more people, offering more, or one more of them. */
import { isAttending, joinWords, type SeriesDocument, type Session, type Task } from '@/lib/build';
import { addDays, dateOf, eachDate, endOfDay, formatMoment, formatWorkLength, instantOf, minuteOfDay, wallOf, weekdayOf } from '@/lib/calendar';
import type { Placement, Problem } from '@/lib/scheduling';
import { addMinutes, minutesBetween, type Instant } from '@/lib/units';
import { isFilmed, sessionDemands } from '../compile/session-calendars';
import { isWorkshopWork, readName } from '../compile/names';
import { withDocument } from './relief-candidates';
import { sessionsOf, type Narrowed, type Wanted, type Widening } from './widening';

const HOUR = 60;
/** Sessions that one change may touch; more is another plan. */
const MOST_TOUCHED = 3;
/** Days after the last session on which another one is thought of. */
const BEYOND = 14;
const MOST_NEW = 60;
/** Nobody works longer in one go than this, minutes. Common practice, no source. */
const LONGEST_SESSION = 12 * HOUR;
/** Minute of the day before which no session begins for the sake of a longer one. Our choice. */
const EARLIEST = 8 * HOUR;

interface SessionChange {
  readonly size: number;
  readonly sort?: string;
  /** The session as it would be; the same one: nothing to change. */
  readonly change: (session: Session) => Session;
  /** Whether the placements that lie in it need the change; left out: all that lie in it do. */
  readonly isUsed?: (before: Session, placements: readonly Placement[]) => boolean;
  /** From `the session of Tue 1 Dec 18:30`. */
  readonly words: (sessions: string) => string;
}

const withSessions = (document: SeriesDocument, change: (session: Session) => Session): SeriesDocument => ({ ...document, sessions: document.sessions.map(change) });

function lies({ compiled: { draft: { clock } } }: Wanted, { end, start }: Session, placement: Placement): boolean {
  const [from, to] = [clock.down(start), clock.up(end)];
  return placement.pieces.some((piece) => piece.start < to && piece.end > from);
}

const listMoments = (sessions: readonly Session[], zone: string): readonly string[] => sessions.map(({ start }) => formatMoment(start, zone));

/** Nothing where no session ahead would change. */
function widen(wanted: Wanted, { change, isUsed, size, sort, words }: SessionChange): readonly Widening[] {
  const { compiled, document } = wanted;
  const ahead = (session: Session): Session => (session.end > compiled.draft.now ? change(session) : session);
  const narrow = (placements: readonly Placement[]): Narrowed | null => {
    const touched = document.sessions.filter((session) => {
      const changed = ahead(session);
      const inside = placements.filter((placement) => lies(wanted, changed, placement));
      return changed !== session && inside.length > 0 && (isUsed === undefined || isUsed(session, inside));
    });
    if (touched.length === 0 || touched.length > MOST_TOUCHED) return null;
    const ids = new Set(touched.map(({ id }) => id));
    const text = words(sessionsOf(listMoments(touched, document.series.zone)));
    return { text, size: size + touched.length - 1, problem: () => withDocument(compiled, withSessions(document, (session) => (ids.has(session.id) ? change(session) : session))) };
  };
  if (document.sessions.every((session) => ahead(session) === session)) return [];
  return [{ size, ...(sort === undefined ? {} : { sort }), wide: () => withDocument(compiled, withSessions(document, ahead)), narrow }];
}

/** So many hours longer, as far as the next session leaves time. */
function stretch(wanted: Wanted, hours: number): readonly Widening[] {
  const { compiled: { draft: { clock } }, document } = wanted;
  const change = (session: Session): Session => {
    const end = addMinutes(session.end, hours * HOUR);
    const isFree = !document.sessions.some((other) => other.id !== session.id && other.start < end && session.end <= other.start);
    const isBeforeNight = addMinutes(end, -1) < endOfDay(dateOf(session.start, document.series.zone), document.series.zone);
    return isFree && isBeforeNight && minutesBetween(session.start, end) <= LONGEST_SESSION ? { ...session, end } : session;
  };
  const isUsed = (before: Session, placements: readonly Placement[]): boolean => placements.some(({ pieces }) => pieces.some((piece) => piece.end > clock.down(before.end) && piece.start < clock.up(before.end) + hours * HOUR));
  return widen(wanted, { size: 1 + hours, sort: 'longer', change, isUsed, words: (sessions) => `Stay ${hours === 1 ? 'an hour' : `${hours} hours`} longer in ${sessions}` });
}

/** A person who is not there comes too. */
function bring(wanted: Wanted, personId: string): readonly Widening[] {
  const { document } = wanted;
  const { zone } = document.series;
  const person = document.people.find(({ id }) => id === personId)!;
  const change = (session: Session): Session => {
    if (session.crewIds.includes(personId)) return session;
    const changed = { ...session, crewIds: [...session.crewIds, personId] };
    return isAttending(person, changed, zone) ? changed : session;
  };
  return widen(wanted, { size: 3, change, words: (sessions) => `Bring ${person.name} into ${sessions}` });
}

/** What the sessions would have to offer the work. */
function offer(wanted: Wanted, task: Task): readonly Widening[] {
  const { document } = wanted;
  const place = document.places.find(({ id }) => id === task.placeId);
  const floor = warmthNeeded(wanted, task);
  const changes: SessionChange[] = [
    { size: 2, change: (session) => (session.placeIds.includes(task.placeId) ? session : { ...session, placeIds: [...session.placeIds, task.placeId] }), words: (sessions) => `Open ${place?.name ?? 'its place'} in ${sessions}` },
  ];
  if (isFilmed(task)) changes.push({ size: 2, change: (session) => (session.isRecording ? session : { ...session, isRecording: true }), words: (sessions) => `Set up the camera in ${sessions}` });
  if (floor !== null) changes.push({ size: 3, change: (session) => ((session.heating ?? -Infinity) >= floor ? session : { ...session, heating: floor }), words: (sessions) => `Heat ${sessions} to ${floor} °C` });
  if (task.isNoisy) changes.push({ size: 4, change: (session) => (session.isNoiseAllowed ? session : { ...session, isNoiseAllowed: true }), words: (sessions) => `Agree with the neighbours on noise in ${sessions}` });
  return changes.flatMap((change) => widen(wanted, change));
}

function warmthNeeded({ document }: Wanted, { coats, conditions }: Task): Session['heating'] {
  const floors = coats.flatMap(({ materialId }) => document.materials.find(({ id }) => id === materialId)?.minimumTemperature ?? []);
  const all = [...floors, ...(conditions.minimumTemperature === null ? [] : [conditions.minimumTemperature])];
  return all.reduce<Session['heating']>((most, one) => (most === null || one > most ? one : most), null);
}

/** What several tasks ask of one session, the longest work in one go among it. */
interface Asked {
  readonly tasks: readonly Task[];
  /** Minutes. */
  readonly longest: number;
}

/** The session of some that suits the tasks best, made to fit what is left of what they ask. */
function likeSession({ compiled: { draft }, document }: Wanted, { longest, tasks }: Asked, some: readonly Session[]): Session | null {
  const needsDaylight = tasks.some(({ conditions }) => conditions.needsDaylight);
  const demands = tasks.flatMap((task) => sessionDemands(draft, task));
  const met = (session: Session): number => demands.filter(({ isMet }) => isMet(session)).length;
  const [like] = some
    .filter(({ hasDaylight }) => hasDaylight || !needsDaylight)
    .toSorted((a, b) => met(b) - met(a) || minutesBetween(b.start, b.end) - minutesBetween(a.start, a.end) || b.start - a.start);
  if (like === undefined) return null;
  const needed = Math.min(LONGEST_SESSION, Math.ceil(longest / document.series.fillLimit / 30) * 30);
  const extra = Math.max(0, needed - minutesBetween(like.start, like.end));
  // A longer day begins earlier, so that nobody works into the night for it, but not before the morning.
  const early = Math.min(extra, Math.max(0, minuteOfDay(wallOf(like.start, document.series.zone).time) - EARLIEST));
  return {
    ...like,
    start: addMinutes(like.start, -early),
    end: addMinutes(like.end, extra - early),
    placeIds: [...new Set([...like.placeIds, ...tasks.map(({ placeId }) => placeId)])],
    isRecording: like.isRecording || tasks.some(isFilmed),
    isNoiseAllowed: like.isNoiseAllowed || tasks.some(({ isNoisy }) => isNoisy),
  };
}

/** A day of its own for the same session, at the same time on the clock. */
function moveTo(session: Session, date: string, zone: string): Session {
  const start = instantOf(date, wallOf(session.start, zone).time, zone);
  return { ...session, id: `more ${date}`, start, end: addMinutes(start, minutesBetween(session.start, session.end)) };
}

/** Sessions on free days, each like those of its weekday, or, where that has none, like those of other working days or weekends. */
function thinkOfMore(wanted: Wanted, asked: Asked, isUsual: boolean): readonly Session[] {
  const { compiled, document } = wanted;
  const { zone } = document.series;
  const dayOf = (at: Instant): string => dateOf(at, zone);
  const taken = new Set(document.sessions.flatMap(({ end, start }) => eachDate(dayOf(start), dayOf(end))));
  const classOf = (date: string): number => (isUsual ? weekdayOf(date) : Number(weekdayOf(date) > 5));
  const likes = new Map<number, Session | null>();
  for (const kind of new Set(document.sessions.map(({ start }) => classOf(dayOf(start))))) {
    likes.set(kind, likeSession(wanted, asked, document.sessions.filter(({ start }) => classOf(dayOf(start)) === kind)));
  }
  const last = document.sessions.reduce<Instant>((latest, { end }) => (end > latest ? end : latest), compiled.draft.now);
  const more = eachDate(addDays(dayOf(compiled.draft.now), 1), addDays(dayOf(last), BEYOND)).flatMap((date) => {
    const like = taken.has(date) ? null : (likes.get(classOf(date)) ?? null);
    return like === null ? [] : [moveTo(like, date, zone)];
  });
  // The days nearest to now, and those nearest to the end.
  return more.length <= MOST_NEW ? more : [...more.slice(0, MOST_NEW / 2), ...more.slice(-MOST_NEW / 2)];
}

/** One more session: on the weekdays that have some already, or on any. */
function addSession(wanted: Wanted, tasks: readonly Task[], isUsual: boolean): Widening {
  const { chain, compiled, document } = wanted;
  const { zone } = document.series;
  const inOneGo = compiled.problem.activities.filter(({ id, mode }) => chain.includes(id) && mode === 'one-go' && isWorkshopWork(readName(id).kind));
  const tried = thinkOfMore(wanted, { tasks, longest: Math.max(0, ...inOneGo.map(({ duration }) => duration)) }, isUsual);
  const withMore = (some: readonly Session[]): Problem => withDocument(compiled, { ...document, sessions: [...document.sessions, ...some] });
  const size = isUsual ? 5 : 6;
  const tell = (session: Session): string => `${formatMoment(session.start, zone)} for ${formatWorkLength(minutesBetween(session.start, session.end))}`;
  const narrow = (placements: readonly Placement[]): Narrowed | null => {
    const used = tried.filter((session) => placements.some((placement) => lies(wanted, session, placement)));
    if (used.length === 0 || used.length > MOST_TOUCHED) return null;
    const crew = document.people.filter((person) => used.some((session) => isAttending(person, session, zone))).map(({ name }) => name);
    return { text: `Add ${used.length === 1 ? 'a session' : `${used.length} sessions`} with ${joinWords(crew)}, ${joinWords(used.map(tell))}`, size: size + used.length - 1, problem: () => withMore(used) };
  };
  return { size, wide: () => withMore(tried), narrow };
}

/** Everything about sessions that might give the work a place. */
export function widerSessions(wanted: Wanted): readonly Widening[] {
  const { chain, compiled: { draft }, document } = wanted;
  const tasks = [...new Set(chain.flatMap((id) => draft.tasks.get(readName(id).id) ?? []))];
  const own = tasks.slice(0, 2);
  return [
    ...[1, 2, 3].flatMap((hours) => stretch(wanted, hours)),
    ...document.people.flatMap(({ id }) => bring(wanted, id)),
    ...own.flatMap((task) => offer(wanted, task)),
    addSession(wanted, tasks, true), addSession(wanted, tasks, false),
  ];
}

/** Outside jobs: drop-off and collection as trips of the crew, the time away as a lag that depends on when it starts. */
import { addDays, dateOf, expandWeeklyHours, weekdayOf, intersectIntervals, mergeOverlapping, startOfDay, subtractIntervals, type InstantInterval } from '@/lib/calendar';
import { DEFAULT_TERMS, isAttending, type OutsideJob, type Person, type Trade } from '@/lib/build';
import { backAfter, openingHours, rememberByTrade, workingDays } from '@/lib/outwork';
import type { Activity, Interval } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import { addLag, need, previousPlace, type Draft } from './draft';
import { bookedDays, tradeDays } from './past-jobs';
import { addActivity } from './placeable';
import { collectionActivity, dropOffActivity, errandResource, partResource } from './names';

/** Table step of the time away, minutes. A working day opens on the hour or half hour as a rule. */
const AWAY_STEP = 30;
/** Tables kept of one trade. */
const MOST_TABLES = 64;

/** What a trip asks of the hours. */
const TRIP_DEMANDS = 'while the trade is open and somebody has hours for errands';

const zoneOf = (draft: Draft): string => draft.document.series.zone;

/** First and last date the plan covers. */
function dates(draft: Draft): { from: string; to: string } {
  const zone = zoneOf(draft);
  return { from: dateOf(draft.now, zone), to: addDays(dateOf(draft.clock.moment(draft.horizon), zone), 1) };
}

function toMinutes(draft: Draft, spans: readonly InstantInterval[]): Interval[] {
  return spans
    .map(({ start, end }) => ({ start: Math.max(draft.clock.up(start), draft.nowMinute), end: Math.min(draft.clock.down(end), draft.horizon) }))
    .filter((span) => span.start < span.end);
}

/** Hours of errands by draft: each trade asks for those of everybody. */
const errands = new WeakMap<Draft, { readonly byPerson: Map<string, InstantInterval[]>; anybody: InstantInterval[] | null }>();

function errandsOf(draft: Draft) {
  const found = errands.get(draft) ?? { byPerson: new Map<string, InstantInterval[]>(), anybody: null };
  errands.set(draft, found);
  return found;
}

/** Hours in which a person can run an errand: their own hours, less days away and sessions attended. */
function errandHours(draft: Draft, person: Person): InstantInterval[] {
  const { byPerson } = errandsOf(draft);
  const found = byPerson.get(person.id) ?? findErrandHours(draft, person);
  byPerson.set(person.id, found);
  return found;
}

/** Hours in which anybody can run an errand. */
function anybodysHours(draft: Draft): InstantInterval[] {
  const held = errandsOf(draft);
  held.anybody ??= mergeOverlapping(draft.document.people.flatMap((person) => errandHours(draft, person)));
  return held.anybody;
}

function findErrandHours(draft: Draft, person: Person): InstantInterval[] {
  const own = expandWeeklyHours(person.hours, dates(draft), zoneOf(draft), person.away);
  const busy = draft.document.sessions.filter((session) => isAttending(person, session, zoneOf(draft)));
  return subtractIntervals(own, mergeOverlapping(busy.map(({ start, end }) => ({ start, end }))));
}

/** One errand resource a person, apart from the sessions they attend. */
export function addErrandPeople(draft: Draft): void {
  for (const person of draft.document.people) {
    const calendar = `errands ${person.id}`;
    draft.calendars.set(calendar, { id: calendar, intervals: toMinutes(draft, errandHours(draft, person)) });
    draft.resources.push({ id: errandResource(person.id), capacity: 1, calendar });
  }
}

/** Working days booked for a job; the trade's own promise is kept elsewhere. */
function quotedDays(draft: Draft, job: OutsideJob): number {
  return bookedDays(job, draft.learned(need(draft.trades, job.tradeId, 'outside trade')));
}

/** When a trade can be visited: while it is open and somebody can go; for a collection, on its days for that. */
function tripCalendar(draft: Draft, trade: Trade, isCollection: boolean): string {
  const { collectionDays } = trade.terms ?? DEFAULT_TERMS;
  const isBound = isCollection && collectionDays.length > 0;
  const id = `trips ${trade.id}${isBound ? ' for collections' : ''}`;
  if (!draft.calendars.has(id)) {
    const { from, to } = dates(draft);
    const hours = openingHours(trade, from, to, zoneOf(draft));
    const open = mergeOverlapping(isBound ? hours.filter(({ start }) => collectionDays.includes(weekdayOf(dateOf(start, zoneOf(draft))))) : hours);
    draft.calendars.set(id, { id, intervals: toMinutes(draft, intersectIntervals(open, anybodysHours(draft))) });
  }
  return id;
}

function trip(draft: Draft, job: OutsideJob, trade: Trade, id: string): Activity {
  // Before drop-off the hold keeps the parts; once away, the collection is all that is left to keep them.
  const partIds = job.droppedOffAt === null ? [] : [...new Set(job.parts.map((use) => use.partId))];
  return {
    id,
    duration: trade.trip,
    calendar: tripCalendar(draft, trade, id === collectionActivity(job.id)),
    mode: 'one-go',
    demands: partIds.map((partId) => ({ resource: partResource(partId), amount: 1 })),
    crew: job.crew > 0 ? [{ pool: draft.document.people.map((person) => errandResource(person.id)), count: job.crew }] : [],
    release: draft.nowMinute,
    ...previousPlace(draft, id, errandResource),
  };
}

/** When a job that is already away is ready: as promised, else by its quote. Null: not before the trade's hours run out. */
export function expectedReady(draft: Draft, job: OutsideJob): Instant | null {
  const trade = need(draft.trades, job.tradeId, 'outside trade');
  const droppedOff = job.droppedOffAt ?? draft.now;
  const days = workingDays(openingHours(trade, dateOf(droppedOff, zoneOf(draft)), dates(draft).to, zoneOf(draft)), zoneOf(draft));
  if (job.promisedFor !== null) {
    const promised = startOfDay(job.promisedFor, zoneOf(draft));
    return days.find((day) => day.opens >= promised)?.opens ?? null;
  }
  return backAfter(tradeDays(trade, days, zoneOf(draft), 0), droppedOff, quotedDays(draft, job));
}

const tableOf = rememberByTrade<readonly number[]>(MOST_TABLES);

/** When a job dropped off at each minute of the plan is ready again, for a number of working days. `ready[k]` belongs to minute k x `step`. */
export function awayTable(draft: Draft, job: OutsideJob, count: number): { readonly step: number; readonly ready: readonly number[] } {
  const trade = need(draft.trades, job.tradeId, 'outside trade');
  const key = [count, draft.now, draft.clock.origin, draft.horizon, zoneOf(draft)].join(' ');
  return { step: AWAY_STEP, ready: tableOf(trade, key, () => listReady(draft, trade, count)) };
}

function listReady(draft: Draft, trade: Trade, count: number): readonly number[] {
  const { from, to } = dates(draft);
  const zone = zoneOf(draft);
  const days = workingDays(openingHours(trade, from, addDays(to, 120), zone), zone);
  const trades = tradeDays(trade, days, zone, 0);
  const ready: number[] = [];
  let back = 0;
  let dayEnd = 0;
  for (let minute = 0; minute - AWAY_STEP < draft.horizon; minute += AWAY_STEP) {
    // The answer is the same for a whole day, and the minutes go forward: one look-up a day.
    if (minute >= dayEnd) {
      dayEnd = draft.clock.up(startOfDay(addDays(dateOf(draft.clock.moment(minute), zone), 1), zone));
      const moment = backAfter(trades, draft.clock.moment(minute), count);
      back = moment === null ? draft.horizon : draft.clock.up(moment);
    }
    ready.push(Math.max(minute, back));
  }
  return ready;
}

function addAwayLag(draft: Draft, job: OutsideJob): void {
  const ends = { from: { activity: dropOffActivity(job.id), at: 'end' as const }, to: { activity: collectionActivity(job.id), at: 'start' as const } };
  const trade = need(draft.trades, job.tradeId, 'outside trade');
  const count = quotedDays(draft, job);
  addLag(draft, { ...ends, min: { kind: 'table', ...awayTable(draft, job, count) } }, { kind: 'away', jobId: job.id, days: count, learned: draft.learned(trade) });
}

/** Adds what is left of an outside job: both trips and the time away, or the collection alone. */
export function addJob(draft: Draft, job: OutsideJob): void {
  const trade = need(draft.trades, job.tradeId, 'outside trade');
  const collection = trip(draft, job, trade, collectionActivity(job.id));
  if (job.droppedOffAt !== null) {
    const back = expectedReady(draft, job);
    const release = back === null ? draft.horizon : Math.max(draft.nowMinute, draft.clock.up(back));
    addActivity(draft, { ...collection, release: Math.min(release, draft.horizon) }, TRIP_DEMANDS);
    return;
  }
  addActivity(draft, trip(draft, job, trade, dropOffActivity(job.id)), TRIP_DEMANDS);
  addActivity(draft, collection, TRIP_DEMANDS);
  addAwayLag(draft, job);
  for (const partId of new Set(job.parts.map((use) => use.partId))) {
    draft.holds.push({ id: `away ${job.id} ${partId}`, resource: partResource(partId), amount: 1, from: dropOffActivity(job.id), to: collectionActivity(job.id) });
  }
}

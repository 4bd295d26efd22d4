/** Outside jobs: drop-off and collection as trips of the crew, the time away as a lag that depends on when it starts. */
import { addDays, dateOf, expandWeeklyHours, intersectIntervals, mergeOverlapping, startOfDay, subtractIntervals, type InstantInterval } from '@/lib/calendar';
import type { OutsideJob, Person, Trade } from '@/lib/build';
import { threePointMean } from '@/lib/estimate';
import { openingHours, readyAfter, workingDays } from '@/lib/outwork';
import type { Activity, Interval } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import { addLag, need, previousPlace, type Draft } from './draft';
import { addActivity } from './placeable';
import { collectionActivity, dropOffActivity, errandResource, partResource } from './names';
import { isAttending } from './session-calendars';

/** Table step of the time away, minutes. A working day opens on the hour or half hour as a rule. */
const AWAY_STEP = 30;

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

/** Hours in which a person can run an errand: their own hours, less days away and sessions attended. */
function errandHours(draft: Draft, person: Person): InstantInterval[] {
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

/** Working days booked for a job: the mean of its quote, rounded up; the trade's own promise is kept elsewhere. */
export function quotedDays(job: OutsideJob): number {
  return Math.ceil(threePointMean(job.quote) - 1e-9);
}

function tripCalendar(draft: Draft, trade: Trade): string {
  const id = `trips ${trade.id}`;
  if (!draft.calendars.has(id)) {
    const { from, to } = dates(draft);
    const open = mergeOverlapping(openingHours(trade, from, to, zoneOf(draft)));
    const anybody = mergeOverlapping(draft.document.people.flatMap((person) => errandHours(draft, person)));
    draft.calendars.set(id, { id, intervals: toMinutes(draft, intersectIntervals(open, anybody)) });
  }
  return id;
}

function trip(draft: Draft, job: OutsideJob, trade: Trade, id: string): Activity {
  // Before drop-off the hold keeps the parts; once away, the collection is all that is left to keep them.
  const partIds = job.droppedOffAt === null ? [] : [...new Set(job.parts.map((use) => use.partId))];
  return {
    id,
    duration: trade.trip,
    calendar: tripCalendar(draft, trade),
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
  return readyAfter(days, droppedOff, quotedDays(job), zoneOf(draft));
}

function addAwayLag(draft: Draft, job: OutsideJob, trade: Trade): void {
  const { from, to } = dates(draft);
  const zone = zoneOf(draft);
  const days = workingDays(openingHours(trade, from, addDays(to, 120), zone), zone);
  const ready: number[] = [];
  let date = from;
  let back = 0;
  let dayEnd = 0;
  for (let minute = 0; minute - AWAY_STEP < draft.horizon; minute += AWAY_STEP) {
    // The answer is the same for a whole day, and the minutes go forward: one look-up a day.
    if (minute >= dayEnd) {
      date = dateOf(draft.clock.moment(minute), zone);
      dayEnd = draft.clock.up(startOfDay(addDays(date, 1), zone));
      const moment = readyAfter(days, draft.clock.moment(minute), quotedDays(job), zone);
      back = moment === null ? draft.horizon : draft.clock.up(moment);
    }
    ready.push(Math.max(minute, back));
  }
  const ends = { from: { activity: dropOffActivity(job.id), at: 'end' as const }, to: { activity: collectionActivity(job.id), at: 'start' as const } };
  addLag(draft, { ...ends, min: { kind: 'table', step: AWAY_STEP, ready } }, { kind: 'away', jobId: job.id, days: quotedDays(job) });
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
  addAwayLag(draft, job, trade);
  for (const partId of new Set(job.parts.map((use) => use.partId))) {
    draft.holds.push({ id: `away ${job.id} ${partId}`, resource: partResource(partId), amount: 1, from: dropOffActivity(job.id), to: collectionActivity(job.id) });
  }
}

/**
 * Working time: only the minutes inside sessions count. Every question is answered by binary search, so ten
 * thousand sessions cost hardly more than ten.
 */
import { instant, minutes, MS_PER_MINUTE, type Instant, type Minutes } from '@/lib/units';
import { earlierOf, findFirstEndingAfter, laterOf, requireSortedDisjoint, type InstantInterval } from './intervals';

/** Sessions with the sums that make questions cheap. Build it once with {@link createWorkingCalendar}. */
export interface WorkingCalendar {
  /** Sorted and disjoint. Two that touch are two: work in one go never crosses over. */
  readonly sessions: readonly InstantInterval[];
  /** Working ms before each session, and at the end all of them. Strictly increasing. */
  readonly workedBefore: Float64Array;
  /** Binary heap-shaped tree: a node holds the longest session below it in ms; leaves start at the middle. */
  readonly longest: Float64Array;
}

/**
 * @throws RangeError when the sessions are not sorted and disjoint, or one is empty.
 * @example createWorkingCalendar([{ start: instant(0), end: instant(3600000) }]).sessions.length // 1
 */
export function createWorkingCalendar(sessions: readonly InstantInterval[]): WorkingCalendar {
  requireSortedDisjoint(sessions);
  let leaves = 1;
  while (leaves < sessions.length) leaves *= 2;
  const workedBefore = new Float64Array(sessions.length + 1);
  const longest = new Float64Array(2 * leaves).fill(-1);
  sessions.forEach(({ start, end }, index) => {
    workedBefore[index + 1] = read(workedBefore, index) + (end - start);
    longest[leaves + index] = end - start;
  });
  for (let node = leaves - 1; node >= 1; node -= 1) {
    longest[node] = Math.max(read(longest, 2 * node), read(longest, 2 * node + 1));
  }
  return { sessions: [...sessions], workedBefore, longest };
}

function read(array: Float64Array, index: number): number {
  const value = array[index];
  if (value === undefined) throw new Error(`Nothing at ${index}`);
  return value;
}

function sessionAt(calendar: WorkingCalendar, index: number): InstantInterval {
  const session = calendar.sessions[index];
  if (session === undefined) throw new Error(`No session ${index}`);
  return session;
}

/** To whole ms, so that sums stay exact. */
function toMs(length: number): number {
  if (!Number.isFinite(length) || length < 0) throw new RangeError(`Working time must be 0 minutes or more, got ${length}`);
  return Math.round(length * MS_PER_MINUTE);
}

function workedUpTo(calendar: WorkingCalendar, at: Instant): number {
  const index = findFirstEndingAfter(calendar.sessions, at);
  const before = read(calendar.workedBefore, index);
  return index === calendar.sessions.length ? before : before + Math.max(0, at - sessionAt(calendar, index).start);
}

/** Last session before whose start no more than `worked` ms (or, strictly, less than it) have been worked. */
function findSessionByWork(calendar: WorkingCalendar, worked: number, isStrict: boolean): number {
  let [low, high] = [0, calendar.sessions.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    const before = read(calendar.workedBefore, middle);
    if (isStrict ? before < worked : before <= worked) low = middle;
    else high = middle - 1;
  }
  return low;
}

function momentOfWork(calendar: WorkingCalendar, index: number, worked: number): Instant {
  return instant(sessionAt(calendar, index).start + (worked - read(calendar.workedBefore, index)));
}

/**
 * Earliest moment by which that many working minutes have passed since `from`; null when the sessions run out.
 * No minutes: `from` itself, wherever it lies. A fill that ends with a session ends there, not at the next start.
 * @throws RangeError for a negative length.
 * @example addWorkingTime(createWorkingCalendar([{ start: instant(0), end: instant(3600000) }]), instant(0), 30) // 1800000
 */
export function addWorkingTime(calendar: WorkingCalendar, from: Instant, length: number): Instant | null {
  const ms = toMs(length);
  if (ms === 0) return from;
  const worked = workedUpTo(calendar, from) + ms;
  if (worked > read(calendar.workedBefore, calendar.sessions.length)) return null;
  return momentOfWork(calendar, findSessionByWork(calendar, worked, true), worked);
}

/**
 * Latest moment from which that many working minutes lie ahead until `to`; null when there were not so many.
 * It undoes {@link addWorkingTime} for a start inside a session; a start outside comes back as the next session's start.
 * @throws RangeError for a negative length.
 * @example subtractWorkingTime(createWorkingCalendar([{ start: instant(0), end: instant(3600000) }]), instant(7200000), 30) // 1800000
 */
export function subtractWorkingTime(calendar: WorkingCalendar, to: Instant, length: number): Instant | null {
  const ms = toMs(length);
  if (ms === 0) return to;
  const worked = workedUpTo(calendar, to) - ms;
  return worked < 0 ? null : momentOfWork(calendar, findSessionByWork(calendar, worked, false), worked);
}

/**
 * Working minutes from one moment to another; negative when `to` is earlier.
 * @example workingMinutesBetween(createWorkingCalendar([{ start: instant(0), end: instant(3600000) }]), instant(1800000), instant(9000000)) // 30
 */
export function workingMinutesBetween(calendar: WorkingCalendar, from: Instant, to: Instant): Minutes {
  return minutes((workedUpTo(calendar, to) - workedUpTo(calendar, from)) / MS_PER_MINUTE);
}

/** Place of the first session from `first` on that is at least `ms` long, or -1. Climbs the tree, then descends. */
function findSessionOfLength(calendar: WorkingCalendar, first: number, ms: number): number {
  if (first >= calendar.sessions.length) return -1;
  const leaves = calendar.longest.length / 2;
  let node = leaves + first;
  while (read(calendar.longest, node) < ms) {
    while (node > 1 && node % 2 === 1) node = (node - 1) / 2;
    if (node <= 1) return -1;
    node += 1;
  }
  while (node < leaves) {
    node *= 2;
    if (read(calendar.longest, node) < ms) node += 1;
  }
  return node - leaves;
}

/**
 * Earliest interval of that length at or after `notBefore` inside a single session; null when no session has it.
 * No minutes: an empty interval at the first moment inside a session.
 * @throws RangeError for a negative length.
 * @example placeInOneGo(createWorkingCalendar([{ start: instant(0), end: instant(3600000) }]), instant(600000), 50) // { start: 600000, end: 3600000 }
 */
export function placeInOneGo(calendar: WorkingCalendar, notBefore: Instant, length: number): InstantInterval | null {
  const ms = toMs(length);
  const current = findFirstEndingAfter(calendar.sessions, notBefore);
  if (current === calendar.sessions.length) return null;
  const session = sessionAt(calendar, current);
  const start = laterOf(session.start, notBefore);
  if (session.end - start >= ms) return { start, end: instant(start + ms) };
  const next = findSessionOfLength(calendar, current + 1, ms);
  if (next === -1) return null;
  const { start: nextStart } = sessionAt(calendar, next);
  return { start: nextStart, end: instant(nextStart + ms) };
}

/**
 * Earliest pieces that add up to that length, each inside one session; null when the sessions run out. No minutes: no pieces.
 * @throws RangeError for a negative length.
 * @example placeSplit(createWorkingCalendar([{ start: instant(0), end: instant(60000) }, { start: instant(90000), end: instant(150000) }]), instant(0), 2) // [{ start: 0, end: 60000 }, { start: 90000, end: 150000 }]
 */
export function placeSplit(calendar: WorkingCalendar, notBefore: Instant, length: number): InstantInterval[] | null {
  const ms = toMs(length);
  const all = read(calendar.workedBefore, calendar.sessions.length);
  if (workedUpTo(calendar, notBefore) + ms > all) return null;
  const pieces: InstantInterval[] = [];
  let index = findFirstEndingAfter(calendar.sessions, notBefore);
  for (let left = ms; left > 0; index += 1) {
    const session = sessionAt(calendar, index);
    const start = laterOf(session.start, notBefore);
    const end = earlierOf(session.end, instant(start + left));
    pieces.push({ start, end });
    left -= end - start;
  }
  return pieces;
}

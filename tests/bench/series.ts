/**
 * Makes series problems of any size from a seed: assemblies of parts that are cleaned, welded, coated (with recoat
 * windows), sent to outside trades (ready by a table of working days) and fitted, in evening and weekend sessions of
 * three people with skills and a fill limit. The proportions are our choice, near those of a restoration.
 */
import type { Activity, Budget, Calendar, CrewNeed, Demand, Hold, Interval, Lag, LagLength, Problem, Resource, StateNeed } from '@/lib/scheduling';

const DAY = 1440;
const WEEK = 7 * DAY;
const FILL = 0.7;
const TABLE_STEP = 30;
const PLACES = ['bay', 'bench', 'tent', 'yard'] as const;
type Place = (typeof PLACES)[number];

/** A seeded generator of its own: the same series on any machine (mulberry32). */
export class Dice {
  constructor(private state: number) {}

  /** 0 (included) to 1 (not included). */
  roll(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let x = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
    x = (x + Math.imul(x ^ (x >>> 7), x | 61)) ^ x;
    return ((x ^ (x >>> 14)) >>> 0) / 4294967296;
  }

  whole(low: number, high: number): number {
    return low + Math.floor(this.roll() * (high - low + 1));
  }

  is(chance: number): boolean {
    return this.roll() < chance;
  }

  pick<T>(items: readonly T[]): T {
    return items[this.whole(0, items.length - 1)]!;
  }
}

interface Session extends Interval {
  readonly isWeekend: boolean;
  readonly isRecording: boolean;
}

interface Person {
  readonly id: string;
  readonly skills: readonly string[];
  /** Chance of attending a session. */
  readonly presence: number;
}

const PEOPLE: readonly Person[] = [
  { id: 'maker', skills: ['weld', 'paint', 'engine'], presence: 1 },
  { id: 'helper', skills: ['paint'], presence: 0.7 },
  { id: 'second', skills: ['engine'], presence: 0.6 },
];

interface Draft {
  readonly dice: Dice;
  readonly sessions: readonly Session[];
  readonly horizon: number;
  readonly calendars: Map<string, Calendar>;
  readonly resources: Resource[];
  readonly activities: Activity[];
  readonly lags: Lag[];
  readonly holds: Hold[];
  readonly budgets: Budget[];
}

/** Tuesday and Thursday evenings, Saturdays, every second Sunday. */
function makeSessions(dice: Dice, weeks: number): readonly Session[] {
  return Array.from({ length: weeks }, (_, week) => {
    const at = (day: number, hour: number, length: number, isWeekend: boolean): Session => {
      const start = week * WEEK + day * DAY + hour * 60;
      return { start, end: start + length, isWeekend, isRecording: isWeekend || dice.is(0.75) };
    };
    return [at(1, 18, 180, false), at(3, 18, 180, false), at(5, 10, 450, true), ...(week % 2 === 0 ? [at(6, 10, 450, true)] : [])];
  }).flat();
}

function calendarOf(draft: Draft, needs: { readonly isNoisy: boolean; readonly isFilmed: boolean; readonly place: Place }): string {
  const id = `sessions ${needs.place === 'yard' ? 'daylight' : ''} ${needs.isNoisy ? 'noise' : ''} ${needs.isFilmed ? 'recording' : ''}`;
  if (!draft.calendars.has(id)) {
    const isOpen = (session: Session) => (session.isWeekend || (!needs.isNoisy && needs.place !== 'yard')) && (session.isRecording || !needs.isFilmed);
    draft.calendars.set(id, { id, intervals: draft.sessions.filter(isOpen).map(({ end, start }) => ({ start, end })) });
  }
  return id;
}

function addPeople(draft: Draft): void {
  for (const person of PEOPLE) {
    const attended = draft.sessions.filter(() => draft.dice.is(person.presence));
    draft.calendars.set(`attendance ${person.id}`, { id: `attendance ${person.id}`, intervals: attended.map(({ end, start }) => ({ start, end })) });
    draft.resources.push({ id: person.id, capacity: 1, calendar: `attendance ${person.id}` });
    attended.forEach(({ end, start }, k) => {
      draft.budgets.push({ id: `fill ${person.id} ${k}`, resource: person.id, within: { start, end }, limit: Math.floor((end - start) * FILL) });
    });
    const days = Array.from({ length: draft.horizon / DAY }, (_, day) => day).filter((day) => day % 7 < 5);
    const errands = days.map((day) => ({ start: day * DAY + (person.id === 'maker' ? 780 : 540), end: day * DAY + 1020 }));
    draft.calendars.set(`errands ${person.id}`, { id: `errands ${person.id}`, intervals: errands });
    draft.resources.push({ id: `errand ${person.id}`, capacity: 1, calendar: `errands ${person.id}` });
  }
}

function crewFor(draft: Draft, skill: string | null): CrewNeed[] {
  const able = PEOPLE.filter((person) => skill === null || person.skills.includes(skill)).map((person) => person.id);
  const first: CrewNeed = { pool: able, count: 1 };
  return draft.dice.is(0.12) ? [first, { pool: PEOPLE.map((person) => person.id), count: 1 }] : [first];
}

/** What is known of the tasks while an assembly grows. */
interface Chain {
  readonly part: string;
  last: string | null;
  wait: LagLength;
  window: number | null;
}

const NONE: LagLength = { kind: 'elapsed', minutes: 0 };

function addTask(draft: Draft, id: string, chains: readonly Chain[], more: { readonly skill: string | null; readonly place: Place; readonly isNoisy?: boolean; readonly duration: number; readonly isOneGo: boolean; readonly states?: readonly StateNeed[] }): void {
  const calendar = calendarOf(draft, { isNoisy: more.isNoisy === true, place: more.place, isFilmed: draft.dice.is(0.55) });
  const demands: Demand[] = [{ resource: more.place, amount: 1 }, ...chains.map(({ part }) => ({ resource: part, amount: 1, throughPauses: true }))];
  draft.activities.push({
    id, calendar, demands, duration: more.duration, mode: more.isOneGo ? 'one-go' : 'split', crew: crewFor(draft, more.skill),
    ...(more.isOneGo ? {} : { shortestPiece: Math.min(30, more.duration) }), ...(more.states === undefined ? {} : { states: more.states }),
  });
  const isShot = draft.dice.is(0.12);
  if (isShot) draft.activities.push({ id: `shot ${id}`, calendar, demands, duration: 5 * draft.dice.whole(1, 4), mode: 'one-go', crew: [{ pool: PEOPLE.map((person) => person.id), count: 1 }] });
  for (const chain of chains) {
    if (chain.last === null) continue;
    follow(draft, chain.last, id, chain.wait, chain.window);
    if (isShot) follow(draft, chain.last, `shot ${id}`, chain.wait, null);
  }
  if (isShot) follow(draft, `shot ${id}`, id, NONE, null);
  for (const chain of chains) Object.assign(chain, { last: id, wait: NONE, window: null });
}

function follow(draft: Draft, from: string, to: string, min: LagLength, max: number | null): void {
  draft.lags.push({ id: `${from}>${to}#${draft.lags.length}`, from: { activity: from, at: 'end' }, to: { activity: to, at: 'start' }, min, ...(max === null ? {} : { max }) });
}

/** Primer, coats and the wait until handling, in the tent. */
function addCoats(draft: Draft, id: string, chain: Chain, count: number): void {
  for (let coat = 0; coat < count; coat += 1) {
    addTask(draft, `${id} coat ${coat}`, [chain], {
      skill: 'paint', place: 'tent', duration: 5 * draft.dice.whole(5, 12), isOneGo: true,
      states: [{ medium: 'air tent', state: 'wet', tail: 60 * draft.dice.whole(2, 6) }, { medium: `surface ${chain.part}`, state: `coat ${id} ${coat}`, tail: 60 * draft.dice.whole(2, 6) }],
    });
    const isLast = coat === count - 1;
    chain.wait = { kind: 'elapsed', minutes: isLast ? DAY * draft.dice.whole(1, 3) : 60 * draft.dice.whole(4, 16) };
    chain.window = isLast ? null : DAY * draft.dice.whole(4, 8);
  }
}

/** Working days of an outside trade as a table: dropped off by then, ready at the opening of a later weekday. */
function readyTable(horizon: number, days: number): LagLength {
  const opens = Array.from({ length: horizon / DAY + 60 }, (_, day) => day).filter((day) => day % 7 < 5).map((day) => day * DAY + 480);
  let next = 0;
  const ready = Array.from({ length: Math.ceil(horizon / TABLE_STEP) + 1 }, (_, k) => {
    while (next < opens.length && opens[next]! < k * TABLE_STEP) next += 1;
    return opens[next + days - 1] ?? horizon * 2;
  });
  return { kind: 'table', step: TABLE_STEP, ready };
}

function addOutsideJob(draft: Draft, id: string, chain: Chain, table: LagLength): void {
  const crew = [{ pool: PEOPLE.map((person) => `errand ${person.id}`), count: 1 }];
  for (const name of [`drop ${id}`, `fetch ${id}`]) draft.activities.push({ id: name, calendar: 'trips', demands: [], crew, duration: 60, mode: 'one-go' });
  if (chain.last !== null) follow(draft, chain.last, `drop ${id}`, chain.wait, chain.window);
  follow(draft, `drop ${id}`, `fetch ${id}`, table, null);
  draft.holds.push({ id: `away ${id}`, resource: chain.part, amount: 1, from: `drop ${id}`, to: `fetch ${id}` });
  Object.assign(chain, { last: `fetch ${id}`, wait: NONE, window: null });
}

const SKILLS = [null, null, 'weld', 'engine'] as const;

function addStep(draft: Draft, id: string, chain: Chain): void {
  const { dice } = draft;
  const skill = dice.pick(SKILLS);
  const isNoisy = skill === 'weld' || dice.is(0.15);
  const isDusty = dice.is(0.2);
  const duration = 5 * dice.whole(4, 30);
  addTask(draft, id, [chain], {
    skill, isNoisy, duration, place: isDusty ? dice.pick(['tent', 'yard'] as const) : dice.pick(['bay', 'bench'] as const), isOneGo: duration <= 60 || dice.is(0.4),
    ...(isDusty ? { states: [{ medium: 'air tent', state: 'dusty', tail: 60 }] } : {}),
  });
}

/** Parts with their own chains of work, joined by the fitting at the end. Returns the names of its tasks. */
function addAssembly(draft: Draft, name: string, tasks: number, table: LagLength): readonly string[] {
  const { dice } = draft;
  const before = draft.activities.length;
  const parts = Math.min(Math.max(1, Math.round(tasks / 4)), 4);
  const chains = Array.from({ length: parts }, (_, k): Chain => ({ part: `part ${name} ${k}`, last: null, wait: NONE, window: null }));
  for (const { part } of chains) draft.resources.push({ id: part, capacity: 1 });
  let left = tasks;
  for (let k = 0; left > 1; k += 1) {
    const chain = chains[k % parts]!;
    const id = `${name} ${tasks - left}`;
    const coats = Math.min(left - 1, dice.whole(2, 3));
    if (k >= parts && coats > 1 && dice.is(0.2)) {
      addCoats(draft, id, chain, coats);
      left -= coats;
    } else {
      if (k >= parts && dice.is(0.1)) addOutsideJob(draft, id, chain, table);
      addStep(draft, id, chain);
      left -= 1;
    }
  }
  addTask(draft, `${name} fit`, chains, { skill: null, place: 'bay', duration: 5 * dice.whole(8, 24), isOneGo: false });
  return draft.activities.slice(before).map((activity) => activity.id);
}

/** A series of so many tasks (outside jobs, shots and episodes come on top). The same seed gives the same series. */
export function makeSeries(tasks: number, seed: number): Problem {
  const dice = new Dice(seed);
  const weeks = Math.ceil(tasks / 9) + 14;
  const horizon = weeks * WEEK;
  const draft: Draft = { dice, horizon, sessions: makeSessions(dice, weeks), calendars: new Map(), resources: [], activities: [], lags: [], holds: [], budgets: [] };
  for (const place of PLACES) draft.resources.push({ id: place, capacity: place === 'tent' ? 1 : 2 });
  addPeople(draft);
  const days = Array.from({ length: horizon / DAY }, (_, day) => day).filter((day) => day % 7 < 5);
  draft.calendars.set('trips', { id: 'trips', intervals: days.map((day) => ({ start: day * DAY + 540, end: day * DAY + 1020 })) });
  const table = readyTable(horizon, 6);
  for (let left = tasks, k = 0; left > 0; k += 1) {
    const size = Math.min(left, dice.whole(8, 13));
    const names = addAssembly(draft, `a${k}`, size, table);
    left -= size;
    const share = (tasks - left) / tasks;
    const at = Math.round(((tasks / 20) * share * dice.whole(85, 110)) / 100 + 2) * WEEK;
    draft.activities.push({ id: `episode ${k}`, duration: 0, mode: 'one-go', demands: [], due: { at, weight: dice.is(0.5) ? 5 : 1 } });
    for (const name of names) follow(draft, name, `episode ${k}`, NONE, null);
    // Now and then an assembly builds on an earlier one.
    if (k > 0 && dice.is(0.3)) follow(draft, `a${dice.whole(Math.max(0, k - 4), k - 1)} fit`, `a${k} fit`, NONE, null);
  }
  const { activities, budgets, calendars, holds, lags, resources } = draft;
  return { horizon, calendars: [...calendars.values()], resources, activities, lags, holds, budgets };
}

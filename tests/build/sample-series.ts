/**
 * A small valid series for tests: two people, three weeks of sessions from Monday 2026-11-30 in Europe/London
 * (winter, so wall time is UTC), a frame that is stripped, cleaned, primed and painted, a wheel that goes to
 * an outside trade, and one task that puts them together.
 */
import type {
  Episode, Equipment, Link, Material, OutsideJob, Part, Person, Place, SeriesDocument, Session, Task, Trade, Weekday,
} from '@/lib/build';
import { NO_ROOM_AIR, NO_TASK_HAZARDS, NO_TOOL_EXPOSURE, NO_VAPOUR } from '@/lib/build';
import { celsius, instant, minutes, type Instant } from '@/lib/units';

const SAMPLE_ZONE = 'Europe/London';
/** Monday of the first week. */
const SAMPLE_START = '2026-11-30';

/** A moment from winter wall time in London. @example at('2026-12-01', '18:30') */
export function at(date: string, time: string): Instant {
  return instant(Date.parse(`${date}T${time}:00Z`));
}

/** The civil date `days` after the first Monday. */
function dayOf(days: number): string {
  return new Date(Date.parse(`${SAMPLE_START}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

const WORKDAYS: readonly Weekday[] = [1, 2, 3, 4, 5];

const people: readonly Person[] = [
  {
    kind: 'person', id: 'person-robin', revision: 1, order: 0, name: 'Robin', skills: ['painting', 'welding'],
    hours: [{ weekday: 2, from: '12:00', to: '14:00' }, { weekday: 6, from: '08:00', to: '18:00' }], away: [],
  },
  {
    kind: 'person', id: 'person-kim', revision: 1, order: 1, name: 'Kim', skills: ['camera'],
    hours: [{ weekday: 1, from: '09:00', to: '17:00' }, { weekday: 5, from: '09:00', to: '17:00' }],
    away: [{ from: '2026-12-24', to: '2026-12-27', why: 'with family' }],
  },
];

const places: readonly Place[] = [
  { kind: 'place', id: 'place-bench', revision: 1, order: 0, name: 'Main bay', capacity: 2, airZone: 'arch', air: NO_ROOM_AIR },
  { kind: 'place', id: 'place-spray', revision: 1, order: 1, name: 'Spray corner', capacity: 1, airZone: 'tent', air: NO_ROOM_AIR },
];

const equipment: readonly Equipment[] = [
  { kind: 'equipment', id: 'equipment-gun', revision: 1, order: 0, name: 'Spray gun', count: 1, exposure: NO_TOOL_EXPOSURE },
];

const parts: readonly Part[] = [
  {
    kind: 'part', id: 'part-frame', revision: 1, order: 0, name: 'Frame', assembly: 'Chassis',
    states: [
      { id: 'frame-bought', name: 'as bought' },
      { id: 'frame-stripped', name: 'stripped' },
      { id: 'frame-clean', name: 'clean' },
      { id: 'frame-primed', name: 'primed' },
      { id: 'frame-painted', name: 'painted' },
      { id: 'frame-wheeled', name: 'on its wheel' },
    ],
    whereabouts: { kind: 'place', id: 'place-bench' },
  },
  {
    kind: 'part', id: 'part-wheel', revision: 1, order: 1, name: 'Wheel', assembly: 'Chassis',
    states: [
      { id: 'wheel-bare', name: 'bare' },
      { id: 'wheel-coated', name: 'powder coated' },
      { id: 'wheel-fitted', name: 'fitted' },
    ],
    whereabouts: { kind: 'store', id: null },
  },
];

const materials: readonly Material[] = [
  {
    kind: 'material', id: 'material-primer', revision: 1, order: 0, name: 'Grey primer', sort: 'primer',
    stages: { touchDry: minutes(30), recoatFrom: minutes(120), recoatUntil: minutes(2880), handle: minutes(480), fullCure: minutes(10_080) },
    referenceTemperature: celsius(20), minimumTemperature: celsius(8), doublingPer: 10, potLife: null,
    hasSolvent: true, hasIsocyanate: false, vapour: NO_VAPOUR, source: 'data sheet, 2024 edition',
  },
  {
    kind: 'material', id: 'material-paint', revision: 1, order: 1, name: 'Green gloss', sort: 'paint',
    stages: { touchDry: minutes(120), recoatFrom: minutes(960), recoatUntil: null, handle: minutes(1440), fullCure: minutes(20_160) },
    referenceTemperature: celsius(20), minimumTemperature: celsius(10), doublingPer: 10, potLife: null,
    hasSolvent: true, hasIsocyanate: false, vapour: NO_VAPOUR, source: 'data sheet, 2024 edition',
  },
];

const trades: readonly Trade[] = [
  {
    kind: 'trade', id: 'trade-coater', revision: 1, order: 0, name: 'Canal Street Coaters', craft: 'powder coater',
    openHours: WORKDAYS.map((weekday) => ({ weekday, from: '08:00', to: '17:00' })),
    closed: [{ from: '2026-12-25', to: '2026-12-28', why: 'holidays' }], trip: minutes(60), contact: '',
  },
];

const outsideJobs: readonly OutsideJob[] = [
  {
    kind: 'outsideJob', id: 'job-wheel', revision: 1, order: 0, name: 'Powder coat the wheel', tradeId: 'trade-coater',
    episodeId: 'episode-2', parts: [{ partId: 'part-wheel', from: 'wheel-bare', to: 'wheel-coated' }],
    quote: { low: 3, likely: 4, high: 8 }, crew: 1, droppedOffAt: null, promisedFor: null, collectedAt: null,
  },
];

/** A task with the usual values; `more` says what is special about it. */
export function sampleTask(id: string, order: number, name: string, more: Partial<Task> = {}): Task {
  return {
    kind: 'task', id, revision: 1, order, name, category: 'repair', episodeId: 'episode-1', placeId: 'place-bench', parts: [],
    effort: { low: minutes(45), likely: minutes(60), high: minutes(120) }, inOneGo: false, irreversible: false,
    crew: [{ skill: null, count: 1 }], equipmentIds: [], coats: [], coverage: 'none', shots: [],
    conditions: { minimumTemperature: null, needsDaylight: false }, isDusty: false, isNoisy: false, layOut: [], cautions: [], hazards: NO_TASK_HAZARDS,
    manualReference: '', pinnedStart: null, doneAt: null, ...more,
  };
}

const tasks: readonly Task[] = [
  sampleTask('task-strip', 0, 'Strip the frame', {
    category: 'strip', irreversible: true, coverage: 'moved camera',
    parts: [{ partId: 'part-frame', from: 'frame-bought', to: 'frame-stripped' }],
    effort: { low: minutes(60), likely: minutes(90), high: minutes(180) },
    shots: [
      { id: 'shot-before', name: 'Frame as bought, all round', purpose: 'before', time: minutes(20), mustHave: true, filmedAt: null },
      { id: 'shot-during', name: 'First bolt out', purpose: 'during', time: minutes(10), mustHave: false, filmedAt: null },
    ],
    layOut: ['gloves', 'labels'], cautions: ['Support the frame before the last bolt.'],
  }),
  sampleTask('task-clean', 1, 'Clean the frame', {
    category: 'clean', isDusty: true, isNoisy: true,
    parts: [{ partId: 'part-frame', from: 'frame-stripped', to: 'frame-clean' }],
    effort: { low: minutes(120), likely: minutes(240), high: minutes(360) },
  }),
  sampleTask('task-prime', 2, 'Prime the frame', {
    category: 'paint', placeId: 'place-spray', inOneGo: true, crew: [{ skill: 'painting', count: 1 }],
    parts: [{ partId: 'part-frame', from: 'frame-clean', to: 'frame-primed' }],
    equipmentIds: ['equipment-gun'], coats: [{ id: 'coat-primer', materialId: 'material-primer' }],
    conditions: { minimumTemperature: celsius(8), needsDaylight: false }, layOut: ['respirator'],
  }),
  sampleTask('task-paint', 3, 'Paint the frame', {
    category: 'paint', placeId: 'place-spray', inOneGo: true, crew: [{ skill: 'painting', count: 1 }], episodeId: 'episode-2',
    parts: [{ partId: 'part-frame', from: 'frame-primed', to: 'frame-painted' }], coverage: 'time-lapse',
    equipmentIds: ['equipment-gun'], coats: [{ id: 'coat-green', materialId: 'material-paint' }],
    conditions: { minimumTemperature: celsius(10), needsDaylight: false }, layOut: ['respirator'],
  }),
  sampleTask('task-fit', 4, 'Fit the wheel', {
    category: 'assembly', coverage: 'inserts and teaching', crew: [{ skill: null, count: 2 }], episodeId: 'episode-2',
    parts: [
      { partId: 'part-frame', from: 'frame-painted', to: 'frame-wheeled' },
      { partId: 'part-wheel', from: 'wheel-coated', to: 'wheel-fitted' },
    ],
  }),
  sampleTask('task-closing', 5, 'Closing words beside the frame', {
    category: 'filming', coverage: 'piece to camera', inOneGo: true, crew: [{ skill: null, count: 1 }, { skill: 'camera', count: 1 }],
    parts: [{ partId: 'part-frame', from: 'frame-wheeled', to: null }], episodeId: 'episode-2',
    effort: { low: minutes(20), likely: minutes(30), high: minutes(45) },
  }),
];

const links: readonly Link[] = [
  {
    kind: 'link', id: 'link-recoat', revision: 1, order: 0, name: 'Primer ready for paint',
    from: { kind: 'task', id: 'task-prime' }, to: { kind: 'task', id: 'task-paint' },
    stage: 'recoatFrom', minWait: minutes(0), maxWait: null, clock: 'elapsed',
  },
  {
    kind: 'link', id: 'link-handle', revision: 1, order: 1, name: 'Paint hard enough to handle',
    from: { kind: 'task', id: 'task-paint' }, to: { kind: 'task', id: 'task-fit' },
    stage: 'handle', minWait: minutes(0), maxWait: null, clock: 'elapsed',
  },
];

/** Tuesday and Thursday evenings and all of Saturday, three weeks. */
const sessions: readonly Session[] = [0, 7, 14].flatMap((monday, week) =>
  [
    { day: 1, from: '18:30', to: '21:30', name: 'Tuesday evening', isRecording: false },
    { day: 3, from: '18:30', to: '21:30', name: 'Thursday evening', isRecording: true },
    { day: 5, from: '10:00', to: '17:00', name: 'Saturday', isRecording: true },
  ].map((slot, index): Session => ({
    kind: 'session', id: `session-${week * 3 + index + 1}`, revision: 1, order: week * 3 + index, name: slot.name,
    start: at(dayOf(monday + slot.day), slot.from), end: at(dayOf(monday + slot.day), slot.to),
    placeIds: ['place-bench', 'place-spray'], crewIds: ['person-robin', 'person-kim'], isRecording: slot.isRecording,
    hasDaylight: slot.day === 5, isNoiseAllowed: slot.day === 5, heating: slot.day === 5 ? celsius(15) : null,
  })),
);

const episodes: readonly Episode[] = [
  { kind: 'episode', id: 'episode-1', revision: 1, order: 0, name: 'Down to bare metal', releaseDate: '2026-12-20', isEvergreen: false, status: 'planned' },
  { kind: 'episode', id: 'episode-2', revision: 1, order: 1, name: 'Green at last', releaseDate: '2027-01-03', isEvergreen: false, status: 'planned' },
];

/** The whole series; `more` replaces lists. @example sampleSeries({ links: [] }) */
export function sampleSeries(more: Partial<SeriesDocument> = {}): SeriesDocument {
  return {
    series: {
      kind: 'series', id: 'series-sample', revision: 1, order: 0, name: 'Arch build', zone: SAMPLE_ZONE, cadenceDays: 14, leadDays: 5,
      fillLimit: 0.7, workshopTemperature: celsius(12), runtime: { target: 20, min: 15, max: 25 },
      frameRate: { numerator: 25, denominator: 1 }, titles: 0.5, bankMinimum: 2, usesExperience: false, frozenDays: 0,
      filming: { position: 8, shot: 2, take: 3, reset: 4, retakeChance: 0.25, oneWay: 25, packUp: 10, own: [] },
      camera: { cameras: 1, bitRate: 100, cards: [64, 64], batteries: 3, batteryMinutes: 90, fillLimit: 0.9 },
    },
    changeNumber: 0, planChange: 0, people, places, equipment, parts, materials, trades, outsideJobs, tasks, links, sessions, episodes,
    segments: [], timeLogs: [], sponsorships: [], hazards: [], statements: [],
    coatingSystems: [], heatingRuns: [], weather: [], readings: [], cameras: [], promises: [], ...more,
  };
}

/** The sample with a camera and a promise made on camera. */
export function filmedSeries(): SeriesDocument {
  return sampleSeries({
    cameras: [{ kind: 'camera', id: 'camera-a', revision: 1, order: 0, name: 'A', rate: { numerator: 30_000, denominator: 1001 }, isDropFrame: true, clockOffset: -2 }],
    promises: [{ kind: 'promise', id: 'promise-shine', revision: 1, order: 0, name: 'It will shine', saidInId: 'episode-1', where: 'closing words', dueId: 'episode-2', closure: 'replaced', reason: 'Matt suits it better', closedInId: 'episode-2' }],
  });
}

/** The sample with one task changed. @example withTask('task-prime', { coats: [] }) */
export function withTask(id: string, more: Partial<Task>): SeriesDocument {
  const document = sampleSeries();
  if (!document.tasks.some((task) => task.id === id)) throw new Error(`The sample has no task ${id}`);
  return { ...document, tasks: document.tasks.map((task) => (task.id === id ? { ...task, ...more } : task)) };
}

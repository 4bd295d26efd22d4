/** A small series with every kind of record and every kind of reference, every optional field once full and once empty. */
import type {
  Change, Episode, Equipment, HazardRecord, Link, Material, OutsideJob, Part, Person, Place, RecordEdit, Segment, Series, SeriesRecord, Session, Sponsorship, Statement, Task, TimeLog, Trade,
} from '@/lib/build';
import type { PlanResult } from '@/lib/plan';
import { NO_ROOM_AIR, NO_TASK_HAZARDS, NO_VAPOUR } from '@/lib/build';
import { celsius, instant, minutes } from '@/lib/units';

export const AT = instant(Date.UTC(2026, 10, 30, 18, 0));

export const series: Series = {
  kind: 'series', id: 's1', revision: 1, order: 0, name: 'Outfit', zone: 'Europe/London', cadenceDays: 14, leadDays: 5, fillLimit: 0.7,
  workshopTemperature: celsius(7.5), runtime: { target: 22, min: 18, max: 30 }, frameRate: { numerator: 30000, denominator: 1001 },
  titles: 0.75, bankMinimum: 3, usesExperience: true, frozenDays: 3, goals: ['bank', 'lateness', 'finish', 'changes', 'heating'],
  filming: { position: 6, shot: 2.5, take: 4, reset: 5, retakeChance: 0.3, oneWay: 20, packUp: 12, own: [{ coverage: 'montage', positions: 1, positionsPerHour: 1.5, shots: 2, shotsPerHour: 4 }] },
  camera: { cameras: 2, bitRate: 150, cards: [128, 64], batteries: 0, batteryMinutes: 75, fillLimit: 0.8 },
  sourceReadings: [{ text: 'Handbook, 3rd edition', on: '2026-11-30', by: 'Maker' }],
};

const person: Person = {
  kind: 'person', id: 'p1', revision: 1, order: 0, name: 'Maker', skills: ['weld', 'paint'],
  hours: [{ weekday: 2, from: '18:30', to: '24:00' }], away: [{ from: '2026-12-24', to: '2026-12-27', why: 'holiday' }],
};
export const place: Place = { kind: 'place', id: 'pl1', revision: 1, order: 0, name: 'Arch', capacity: 2, airZone: 'arch', air: { volume: 180, airChanges: 2.5, source: 'measured' } };
const booth: Place = { kind: 'place', id: 'pl2', revision: 1, order: 1, name: 'Booth', capacity: 1, airZone: 'booth', air: NO_ROOM_AIR };
const hoist: Equipment = { kind: 'equipment', id: 'e1', revision: 1, order: 0, name: 'Hoist', count: 1, exposure: { noise: 84.5, vibration: null, source: 'handbook' } };
const trade: Trade = {
  kind: 'trade', id: 't1', revision: 1, order: 0, name: 'Zinc works', craft: 'galvanizer', openHours: [{ weekday: 1, from: '08:00', to: '16:00' }],
  closed: [{ from: '2026-12-21', to: '2027-01-03', why: 'closed' }], trip: minutes(90), contact: '',
};
export const frame: Part = {
  kind: 'part', id: 'pa1', revision: 1, order: 0, name: 'Frame', assembly: 'Frame',
  states: [{ id: 'bare', name: 'bare' }, { id: 'primed', name: 'primed' }], whereabouts: { kind: 'place', id: 'pl1' },
};
export const bracket: Part = { ...frame, id: 'pa2', order: 1, name: 'Bracket', whereabouts: { kind: 'trade', id: 't1' } };
export const seat: Part = { ...frame, id: 'pa3', order: 2, name: 'Seat', whereabouts: { kind: 'store', id: null } };
const primer: Material = {
  kind: 'material', id: 'm1', revision: 1, order: 0, name: 'Epoxy primer', sort: 'primer',
  stages: { touchDry: minutes(60), recoatFrom: minutes(240), recoatUntil: minutes(4320), handle: minutes(720), fullCure: minutes(10080) },
  referenceTemperature: celsius(20), minimumTemperature: celsius(10), doublingPer: 10, potLife: minutes(480), hasSolvent: true, hasIsocyanate: false, vapour: NO_VAPOUR,
  source: 'data sheet',
};
const glue: Material = { ...primer, id: 'm2', order: 1, name: 'Glue', sort: 'adhesive', stages: { ...primer.stages, recoatUntil: null }, potLife: null, source: '' };
const episode: Episode = { kind: 'episode', id: 'ep1', revision: 1, order: 0, name: 'Bare metal', releaseDate: '2026-12-18', isEvergreen: false, status: 'planned' };
export const prime: Task = {
  kind: 'task', id: 'ta1', revision: 1, order: 0, name: 'Prime the frame', category: 'paint', episodeId: 'ep1', placeId: 'pl2',
  parts: [{ partId: 'pa1', from: 'bare', to: 'primed' }, { partId: 'pa2', from: null, to: null }],
  effort: { low: minutes(60), likely: minutes(90), high: minutes(150) }, inOneGo: true, irreversible: true,
  crew: [{ skill: 'paint', count: 1 }, { skill: null, count: 1 }], equipmentIds: ['e1'],
  coats: [{ id: 'c1', materialId: 'm1' }, { id: 'c2', materialId: 'm2' }], coverage: 'time-lapse',
  shots: [{ id: 'sh1', name: 'Bare frame', purpose: 'before', time: minutes(10), mustHave: true, filmedAt: instant(1_796_000_000_000), states: [{ partId: 'pa1', stateId: 'bare' }] }],
  conditions: { minimumTemperature: celsius(12), needsDaylight: true }, isDusty: false, isNoisy: true, layOut: ['gloves'], cautions: ['Ventilate.'],
  hazards: { facts: ['spraying', 'indoors'], toolShare: 0.5, sprayed: 300, departure: { manualValue: '12 Nm', ownValue: '10 Nm', reason: 'old thread', warning: 'check it' } },
  manualReference: 'p. 12', pinnedStart: AT, doneAt: null,
};
export const strip: Task = {
  ...prime, id: 'ta2', order: 1, name: 'Strip the frame', category: 'strip', episodeId: null, placeId: 'pl1', parts: [], crew: [], equipmentIds: [], coats: [],
  coverage: 'none', shots: [], conditions: { minimumTemperature: null, needsDaylight: false }, layOut: [], cautions: [], hazards: NO_TASK_HAZARDS, manualReference: '', pinnedStart: null, doneAt: AT,
};
export const zinc: OutsideJob = {
  kind: 'outsideJob', id: 'j1', revision: 1, order: 0, name: 'Galvanize', tradeId: 't1', episodeId: 'ep1', parts: [{ partId: 'pa2', from: 'bare', to: 'primed' }],
  quote: { low: 3, likely: 5, high: 10 }, crew: 1, droppedOffAt: AT, promisedFor: '2026-12-09', collectedAt: null,
};
const link: Link = {
  kind: 'link', id: 'l1', revision: 1, order: 0, name: '', from: { kind: 'task', id: 'ta2' }, to: { kind: 'outsideJob', id: 'j1' }, stage: 'handle',
  minWait: minutes(30), maxWait: minutes(600), clock: 'elapsed',
};
const backLink: Link = {
  ...link, id: 'l2', order: 1, from: { kind: 'outsideJob', id: 'j1' }, to: { kind: 'task', id: 'ta1' }, stage: null, minWait: minutes(0), maxWait: null, clock: 'working',
};
export const session: Session = {
  kind: 'session', id: 'se1', revision: 1, order: 0, name: 'Tuesday', start: AT, end: instant(AT + 3 * 3_600_000), placeIds: ['pl2', 'pl1'], crewIds: ['p1'],
  isRecording: true, hasDaylight: false, isNoiseAllowed: true, heating: celsius(15),
};
const coldSession: Session = { ...session, id: 'se2', order: 1, placeIds: [], crewIds: [], heating: null };

const opening: Segment = {
  kind: 'segment', id: 'sg1', revision: 1, order: 0, name: 'The frame as it came', episodeId: 'ep1', role: 'opening', length: 2.5, isResult: false, hook: 0.8, hang: 0.25,
  thread: 'Frame', isEvergreen: true, isFlashback: true, storyDate: '2026-11-29', ending: 'never ends it', taskIds: ['ta2', 'ta1'],
};
const loose: Segment = { ...opening, id: 'sg2', order: 1, name: 'A word on threads', episodeId: null, storyDate: null, ending: 'free', taskIds: [] };
const spent: TimeLog = {
  kind: 'timeLog', id: 'tl1', revision: 1, order: 0, name: 'Prime the frame', taskId: 'ta1', activity: 'filming', start: AT, end: instant(AT + 3_600_000), wasInterrupted: true,
};
const running: TimeLog = { ...spent, id: 'tl2', order: 1, activity: 'hands-on', end: null, wasInterrupted: false };
const owed: Sponsorship = {
  kind: 'sponsorship', id: 'so1', revision: 1, order: 0, name: 'Discs in use', sponsor: 'Abrasives', what: 'Said once.', exclusiveIn: 'abrasives', episodeId: 'ep1',
  part: 'first third', dueDate: '2026-12-18', minimumSeconds: 45, spotStart: 61.5, spotEnd: 110, disclosureText: 'Paid promotion', spokenAt: 60, shownFrom: 59, shownUntil: 70,
  needsApproval: true, approvedOn: '2026-12-15',
};
const open: Sponsorship = {
  ...owed, id: 'so2', order: 1, episodeId: null, part: 'anywhere', dueDate: null, spotStart: null, spotEnd: null, spokenAt: null, shownFrom: null, shownUntil: null, approvedOn: null,
};

const hazard: HazardRecord = {
  kind: 'hazard', id: 'h1', revision: 1, order: 0, name: 'Bees', severity: 'III', trigger: [['indoors', 'heating'], ['alone']],
  controls: [{ id: 'c1', level: 'engineer', text: 'A net', isShown: true }],
  equipment: [{ id: 'e1', text: 'Veil', sign: null, standard: '', standardStatus: 'practice' }, { id: 'e2', text: 'Gloves', sign: 'M009', standard: 'EN 388', standardStatus: 'memory' }],
  signs: ['W001'], caution: { screen: 'Bees.', spoken: 'Mind the bees.' }, show: 'the net', deferral: { text: 'a swarm', when: [['hydrofluoric']] }, needsSecondPerson: true,
  sources: [{ text: 'a keeper', status: 'read', reviewed: '2026-11-01' }, { text: 'hearsay', status: 'memory', reviewed: null }], replaces: null,
};
const licensed: HazardRecord = { ...hazard, id: 'h2', order: 1, deferral: { text: 'always', when: 'always' }, sources: [], replaces: 'laser-uv' };
const otherLicensed: HazardRecord = { ...hazard, id: 'h3', order: 2, deferral: null };
const signed = { kind: 'statement', revision: 1, personId: 'p1', signedBy: 'Maker', at: AT, reason: 'seen together' } as const;
const statements: readonly Statement[] = [
  { ...signed, id: 'st1', order: 0, name: 'Took out', about: { sort: 'hazard-removed', taskId: 'ta1', hazardId: 'h1' } },
  { ...signed, id: 'st2', order: 1, name: 'Signed', about: { sort: 'evidence', episodeId: 'ep1', itemId: 'spoken:h1', fingerprint: '00ff', evidence: { kind: 'take', take: 'A 1', timecode: '00:00:01:00' } } },
  { ...signed, id: 'st3', order: 2, name: 'Signed', about: { sort: 'evidence', episodeId: 'ep1', itemId: 'consents', fingerprint: '00ff', evidence: { kind: 'exception' } } },
  { ...signed, id: 'st4', order: 3, name: 'Override', about: { sort: 'override', episodeId: 'ep1', status: 'cleared', blocks: ['a', 'b'] } },
];

/** Every record but the series, what is pointed at after what points at it: storage has to find the order. */
export const records: readonly SeriesRecord[] = [
  opening, loose, spent, running, owed, open, session, coldSession, link, backLink, prime, strip, zinc, frame, bracket, seat, primer, glue, episode, trade, hoist, place, booth, person, hazard, licensed, otherLicensed, ...statements,
];

export function makeEdit(after: SeriesRecord): RecordEdit {
  return { kind: after.kind, id: after.id, before: null, after };
}

export function removeEdit(before: SeriesRecord): RecordEdit {
  return { kind: before.kind, id: before.id, before, after: null };
}

/** `fields` over the record, one revision on. */
export function changeEdit<R extends SeriesRecord>(before: R, fields: Partial<R>): RecordEdit & { readonly after: R } {
  return { kind: before.kind, id: before.id, before, after: { ...before, ...fields, revision: before.revision + 1 } };
}

export function changeOf(label: string, edits: readonly RecordEdit[], undoes: number | null = null): Change {
  return { label, edits, undoes };
}

export const everything: Change = changeOf('Made everything', records.map(makeEdit));

export const planResult: PlanResult = {
  blocks: [
    {
      id: 'cure:ta1:c1', kind: 'cure', subject: { kind: 'task', id: 'ta1' }, title: 'Epoxy primer dries', start: AT, end: instant(AT + 60_000),
      pieces: [{ start: AT, end: instant(AT + 60_000) }], placeId: null, crewIds: [], partIds: ['pa1'], episodeId: 'ep1', isPinned: false,
      stages: { materialId: 'm1', touchDry: AT, recoatFrom: AT, recoatUntil: null, handle: AT, fullCure: AT },
      because: [{ text: 'waits for the coat', until: AT, change: null, blockId: 'task:ta1' }],
    },
  ],
  unplaced: [{ subject: { kind: 'outsideJob', id: 'j1' }, title: 'Galvanize', because: [] }],
  episodes: [{ episodeId: 'ep1', shootDue: AT, recordedBy: null, late: minutes(15) }],
  status: 'feasible', finish: AT, earliestFinish: AT, schedulesTried: 12, seed: 7, solveTime: 3.5, from: '2026-11-30', to: '2026-12-06',
};

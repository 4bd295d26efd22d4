/** Fields of records: their names in plain words, and what differs between two versions of a record. */
import type { RecordKind, SeriesRecord } from './model';
import type { FieldsOf } from './records';

type LabelsOf<K extends RecordKind> = Readonly<Record<keyof FieldsOf<K>, string>>;

/** What each field is called on forms and in the history. */
const FIELD_LABELS: { readonly [K in RecordKind]: LabelsOf<K> } = {
  series: {
    name: 'name', zone: 'time zone', cadenceDays: 'days between releases', leadDays: 'days from recording to release', fillLimit: 'share of a session that may be booked',
    workshopTemperature: 'workshop temperature', runtime: 'runtime', frameRate: 'frame rate',
    titles: 'titles', bankMinimum: 'episodes in hand', usesExperience: 'planning by experience', filming: 'filming times', camera: 'cameras and cards',
    workshop: 'room and heater', frozenDays: 'days that stay as planned', goals: 'what plans put first', sourceReadings: 'readings of sources',
  },
  person: { name: 'name', skills: 'skills', hours: 'hours for errands', away: 'days away', consent: 'consent to be shown' },
  place: { name: 'name', capacity: 'tasks at once', airZone: 'shared air', air: 'air of the room' },
  equipment: { name: 'name', count: 'number', exposure: 'noise and vibration' },
  part: { name: 'name', assembly: 'assembly', states: 'states', whereabouts: 'whereabouts' },
  material: {
    name: 'name', sort: 'sort', stages: 'drying times', referenceTemperature: 'temperature of the drying times', minimumTemperature: 'lowest temperature',
    doublingPer: 'kelvins that double the rate', potLife: 'pot life', hasSolvent: 'solvent', hasIsocyanate: 'isocyanate', vapour: 'what evaporates', source: 'source', cure: 'cold, damp and windows', usableUntil: 'last day of the batch',
  },
  trade: { name: 'name', craft: 'craft', openHours: 'opening hours', closed: 'closed days', trip: 'trip time', contact: 'contact', terms: 'terms' },
  outsideJob: {
    name: 'name', tradeId: 'trade', episodeId: 'episode', parts: 'parts', quote: 'quote', crew: 'people for a trip',
    droppedOffAt: 'drop-off', promisedFor: 'promised day', collectedAt: 'collection', process: 'process',
  },
  task: {
    name: 'name', category: 'category', episodeId: 'episode', placeId: 'place', parts: 'parts', effort: 'hands-on time', inOneGo: 'in one go',
    irreversible: 'irreversible', crew: 'crew', equipmentIds: 'equipment', coats: 'coats', coverage: 'coverage', shots: 'shots', conditions: 'conditions',
    isDusty: 'dust', isNoisy: 'noise', layOut: 'things to lay out', cautions: 'cautions', hazards: 'hazard facts', manualReference: 'manual reference',
    pinnedStart: 'fixed start', doneAt: 'done',
  },
  link: { name: 'name', from: 'first end', to: 'second end', stage: 'drying stage', minWait: 'shortest wait', maxWait: 'longest wait', clock: 'clock' },
  session: {
    name: 'name', start: 'start', end: 'end', placeIds: 'places', crewIds: 'crew', isRecording: 'recording', hasDaylight: 'daylight',
    isNoiseAllowed: 'noise allowed', heating: 'heating',
  },
  episode: { name: 'name', releaseDate: 'release date', isEvergreen: 'evergreen', status: 'status', checks: 'captions and flashes' },
  segment: {
    name: 'name', episodeId: 'episode', role: 'role', length: 'length on screen', isResult: 'result', hook: 'hook', hang: 'open end', thread: 'thread',
    isEvergreen: 'evergreen', isFlashback: 'flashback', storyDate: 'day in the story', ending: 'end of an episode', taskIds: 'work shown', cutStart: 'start in the cut',
  },
  timeLog: { name: 'name', taskId: 'task', activity: 'activity', start: 'start', end: 'end', wasInterrupted: 'interruption' },
  sponsorship: {
    name: 'name', sponsor: 'sponsor', what: 'agreement', exclusiveIn: 'exclusive trade', episodeId: 'episode', part: 'place in the episode', dueDate: 'latest release',
    minimumSeconds: 'seconds agreed', spotStart: 'start of the spot', spotEnd: 'end of the spot', disclosureText: 'disclosure', spokenAt: 'disclosure spoken',
    shownFrom: 'disclosure shown from', shownUntil: 'disclosure shown until', needsApproval: 'approval agreed', approvedOn: 'approval',
  },
  hazard: {
    name: 'name', severity: 'severity', trigger: 'what sets it off', controls: 'controls', equipment: 'protective equipment', signs: 'signs', caution: 'caution',
    show: 'what to show', deferral: 'when to leave it', needsSecondPerson: 'second person', sources: 'sources', replaces: 'hazard it replaces',
  },
  statement: { name: 'name', about: 'what it is about', personId: 'person', signedBy: 'signed by', at: 'time', reason: 'reason' },
  coatingSystem: { name: 'name', layers: 'layers', abrading: 'time of an abrasion' },
  heatingRun: { name: 'name', airZone: 'air', start: 'start', end: 'end', setPoint: 'set point' },
  weather: { name: 'name', days: 'days' },
  readings: { name: 'name', airZone: 'air', count: 'rows', from: 'first', to: 'last' },
  camera: { name: 'name', rate: 'frame rate', isDropFrame: 'drop-frame', clockOffset: 'clock' },
  promise: { name: 'words', saidInId: 'said in', where: 'where', dueId: 'due episode', closure: 'how it ended', reason: 'reason', closedInId: 'ended in' },
};

/** The label of a field, or the field's own name when it has none. @example fieldLabel('task', 'effort') // 'hands-on time' */
export function fieldLabel(kind: RecordKind, field: string): string {
  return new Map<string, string>(Object.entries(FIELD_LABELS[kind])).get(field) ?? field;
}

function isPlainObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Plain data with the same content; the order of keys does not matter. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((item, index) => isSame(item, b[index]));
  if (!isPlainObject(a) || !isPlainObject(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && isSame(a[key], b[key]));
}

const KEPT_BY_PROGRAM: readonly string[] = ['id', 'kind', 'revision', 'order'];

/** Fields in which two versions of a record differ; what the program keeps by itself is left out. */
export function changedFields(before: SeriesRecord, after: SeriesRecord): readonly string[] {
  const [old, now] = [new Map<string, unknown>(Object.entries(before)), new Map<string, unknown>(Object.entries(after))];
  return [...new Set([...old.keys(), ...now.keys()])].filter((key) => !KEPT_BY_PROGRAM.includes(key) && !isSame(old.get(key), now.get(key)));
}

/** The few facts that tell one record from the next in a list, each with its unit. */
import type {
  Camera, DateSpan, Episode, Link, Material, OutsideJob, Part, PartUse, Person, Place, Segment, SeriesDocument, SeriesRecord, Session, Sponsorship, SpokenPromise, Task, ThreePoint,
  TimeLog, Trade, WeeklyHours, WorkRef,
} from '@/lib/build';
import { formatDay, formatLength, formatMoment, formatWorkLength } from '@/lib/calendar';
import { minutesBetween } from '@/lib/units';
import { formatLongDay } from './record-form-words';

const DAY_NAMES = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const MOST_NAMES = 3;

type Facts = readonly string[];

/** Names up to three, then how many more. @example listNames(['a', 'b', 'c', 'd']) // 'a, b, c and 1 more' */
function listNames(names: readonly string[]): string {
  const more = names.length - MOST_NAMES;
  return more > 0 ? `${names.slice(0, MOST_NAMES).join(', ')} and ${more} more` : names.join(', ');
}

function count(amount: number, one: string, many = `${one}s`): string {
  return `${amount} ${amount === 1 ? one : many}`;
}

function nameOf(records: readonly { readonly id: string; readonly name: string }[], id: string | null): string | null {
  return records.find((record) => record.id === id)?.name ?? null;
}

function nameDay(weekday: number): string {
  return DAY_NAMES[weekday - 1] ?? '';
}

/** `Mon–Fri 08:00–17:00, Sat 09:00–12:00`: days next to each other with the same hours are joined. */
function sayWeeklyHours(hours: readonly WeeklyHours[]): string {
  const runs: { first: number; last: number; times: string }[] = [];
  for (const { weekday, from, to } of hours.toSorted((a, b) => a.weekday - b.weekday || a.from.localeCompare(b.from))) {
    const times = `${from}–${to}`;
    const open = runs.find((run) => run.times === times && run.last === weekday - 1);
    if (open) open.last = weekday;
    else runs.push({ first: weekday, last: weekday, times });
  }
  return runs.map(({ first, last, times }) => `${first === last ? nameDay(first) : `${nameDay(first)}–${nameDay(last)}`} ${times}`).join(', ');
}

function sayThreePoint({ low, likely, high }: ThreePoint): string {
  if (low === high) return formatWorkLength(likely);
  return `${formatWorkLength(low)} – ${formatWorkLength(likely)} – ${formatWorkLength(high)}`;
}

function saySpans(word: string, spans: readonly DateSpan[]): string | null {
  if (spans.length === 0) return null;
  return `${word} ${listNames(spans.map(({ from, to }) => (from === to ? formatDay(from) : `${formatDay(from)} to ${formatDay(to)}`)))}`;
}

function sayParts(document: SeriesDocument, uses: readonly PartUse[]): string | null {
  const names = [...new Set(uses.map((use) => nameOf(document.parts, use.partId) ?? 'a removed part'))];
  return names.length === 0 ? null : listNames(names);
}

function placeFacts({ capacity, airZone }: Place): (string | null)[] {
  return [`${count(capacity, 'task')} at once`, `air: ${airZone}`];
}

function personFacts({ skills, hours, away, consent }: Person): (string | null)[] {
  return [
    skills.length > 0 ? listNames(skills) : 'no special skill',
    hours.length > 0 ? `errands ${sayWeeklyHours(hours)}` : 'no errand hours',
    saySpans('away', away),
    consent?.givenOn == null ? 'not asked yet to be in picture' : `may be in picture${consent.until === null ? '' : ` until ${formatDay(consent.until)}`}`,
  ];
}

function partFacts(part: Part, document: SeriesDocument): (string | null)[] {
  const { kind, id } = part.whereabouts;
  const where = kind === 'place' ? nameOf(document.places, id) : kind === 'trade' ? `away at ${nameOf(document.trades, id) ?? 'a removed trade'}` : 'in store';
  return [part.assembly || null, part.states.map((state) => state.name).join(' → '), where];
}

function materialFacts({ sort, stages, referenceTemperature, minimumTemperature, source, usableUntil }: Material): (string | null)[] {
  const until = stages.recoatUntil === null ? 'on' : `to ${formatLength(stages.recoatUntil)}`;
  return [
    sort,
    `recoat from ${formatLength(stages.recoatFrom)} ${until}, cured ${formatLength(stages.fullCure)}, at ${referenceTemperature} °C`,
    `not below ${minimumTemperature} °C`,
    usableUntil === undefined ? null : `batch usable until ${formatDay(usableUntil)}`,
    source === '' ? 'no source for the values' : null,
  ];
}

function tradeFacts({ craft, openHours, closed, trip }: Trade): (string | null)[] {
  return [craft || null, openHours.length > 0 ? `open ${sayWeeklyHours(openHours)}` : 'no opening hours', `trip ${formatWorkLength(trip)}`, saySpans('closed', closed)];
}

function sessionFacts(session: Session, document: SeriesDocument): (string | null)[] {
  const { zone } = document.series;
  const length = minutesBetween(session.start, session.end);
  return [
    `${formatMoment(session.start, zone)} for ${formatWorkLength(length)}`,
    listNames(session.crewIds.map((id) => nameOf(document.people, id) ?? 'somebody removed')) || 'nobody in',
    listNames(session.placeIds.map((id) => nameOf(document.places, id) ?? 'a removed place')) || 'no place open',
    session.isRecording ? 'recording' : 'not recording',
    session.hasDaylight ? 'daylight' : null,
    session.isNoiseAllowed ? null : 'no noise',
    session.heating === null ? null : `heated to ${session.heating} °C`,
  ];
}

function episodeFacts({ releaseDate, status, isEvergreen }: Episode): (string | null)[] {
  return [`released ${formatLongDay(releaseDate)}`, status, isEvergreen ? 'reserve for a bad week' : null];
}

function taskFacts(task: Task, document: SeriesDocument): (string | null)[] {
  const { zone } = document.series;
  const people = task.crew.reduce((sum, need) => sum + need.count, 0);
  const episode = nameOf(document.episodes, task.episodeId);
  return [
    task.category,
    `${sayThreePoint(task.effort)}${task.inOneGo ? ' in one go' : ''}`,
    count(people, 'person', 'people'),
    nameOf(document.places, task.placeId),
    sayParts(document, task.parts),
    task.coats.length > 0 ? count(task.coats.length, 'coat') : null,
    task.coverage === 'none' ? 'not filmed' : `filmed: ${task.coverage}`,
    task.irreversible ? 'once only' : null,
    episode === null ? null : `for ${episode}`,
    task.pinnedStart === null ? null : `fixed at ${formatMoment(task.pinnedStart, zone)}`,
    task.doneAt === null ? null : `done ${formatMoment(task.doneAt, zone)}`,
  ];
}

function outsideJobFacts(job: OutsideJob, document: SeriesDocument): (string | null)[] {
  const { zone } = document.series;
  const { low, likely, high } = job.quote;
  const stand = job.collectedAt !== null
    ? `collected ${formatMoment(job.collectedAt, zone)}`
    : job.droppedOffAt === null ? 'not dropped off yet' : `dropped off ${formatMoment(job.droppedOffAt, zone)}`;
  return [
    nameOf(document.trades, job.tradeId) ?? 'a removed trade',
    sayParts(document, job.parts),
    low === high ? count(likely, 'working day') : `${low} – ${likely} – ${high} working days`,
    stand,
    job.promisedFor === null ? null : `promised for ${formatDay(job.promisedFor)}`,
  ];
}

const STAGES = { touchDry: 'touch dry', recoatFrom: 'ready to recoat', handle: 'ready to handle', fullCure: 'fully cured' } as const;

function nameOfWork(document: SeriesDocument, { kind, id }: WorkRef): string {
  return nameOf(kind === 'task' ? document.tasks : document.outsideJobs, id) ?? 'removed work';
}

function linkFacts({ from, to, stage, minWait, maxWait, clock }: Link, document: SeriesDocument): (string | null)[] {
  const inSessions = clock === 'working' ? ' of sessions' : '';
  return [
    `${nameOfWork(document, from)} → ${nameOfWork(document, to)}`,
    stage === null ? null : `once ${STAGES[stage]}`,
    minWait > 0 ? `at least ${formatLength(minWait)}${inSessions}` : null,
    maxWait === null ? null : `at most ${formatLength(maxWait)}${inSessions}`,
  ];
}

function segmentFacts(segment: Segment, { episodes }: SeriesDocument): (string | null)[] {
  const ends = { free: null, 'ends the episode': 'ends its episode', 'never ends it': 'never ends an episode' } as const;
  return [
    `${segment.length} min`,
    segment.role,
    nameOf(episodes, segment.episodeId) ?? 'in no episode yet',
    segment.isResult ? 'shows a result' : null,
    segment.thread === '' ? null : `thread: ${segment.thread}`,
    segment.isEvergreen ? 'fits any episode' : null,
    segment.isFlashback ? 'flashback' : null,
    ends[segment.ending],
  ];
}

function timeLogFacts({ taskId, activity, start, end, wasInterrupted }: TimeLog, { series, tasks }: SeriesDocument): (string | null)[] {
  return [
    nameOf(tasks, taskId) ?? 'a removed task',
    activity,
    formatMoment(start, series.zone),
    end === null ? 'still going on' : formatWorkLength(minutesBetween(start, end)),
    wasInterrupted ? 'interrupted' : null,
  ];
}

function sponsorshipFacts(one: Sponsorship, { episodes }: SeriesDocument): (string | null)[] {
  return [
    one.sponsor,
    nameOf(episodes, one.episodeId) ?? 'in no episode yet',
    `at least ${one.minimumSeconds} s${one.part === 'anywhere' ? '' : ` in the ${one.part}`}`,
    one.dueDate === null ? null : `released by ${formatDay(one.dueDate)}`,
    one.exclusiveIn === '' ? null : `only one in ${one.exclusiveIn}`,
    one.needsApproval ? (one.approvedOn === null ? 'not approved yet' : `approved ${formatDay(one.approvedOn)}`) : null,
  ];
}

function cameraFacts({ rate, isDropFrame, clockOffset }: Camera): (string | null)[] {
  const clock = clockOffset === 0 ? null : `clock ${Math.abs(clockOffset)} s ${clockOffset > 0 ? 'ahead' : 'behind'}`;
  return [`${Math.round((rate.numerator / rate.denominator) * 1000) / 1000} frames a second${isDropFrame ? ', drop-frame' : ''}`, clock];
}

function promiseFacts({ saidInId, dueId, closure, closedInId }: SpokenPromise, document: SeriesDocument): (string | null)[] {
  const saidIn = nameOf(document.episodes, saidInId);
  const closedIn = nameOf(document.episodes, closedInId);
  return [
    saidIn === null ? null : `said in ${saidIn}`, `due in ${nameOf(document.episodes, dueId) ?? 'the last episode'}`,
    closedIn === null ? closure : `${closure} in ${closedIn}`,
  ];
}

function collectFacts(record: SeriesRecord, document: SeriesDocument): (string | null)[] {
  switch (record.kind) {
    case 'place': return placeFacts(record);
    case 'person': return personFacts(record);
    case 'part': return partFacts(record, document);
    case 'material': return materialFacts(record);
    case 'trade': return tradeFacts(record);
    case 'camera': return cameraFacts(record);
    case 'promise': return promiseFacts(record, document);
    case 'equipment': return [count(record.count, 'piece')];
    case 'session': return sessionFacts(record, document);
    case 'episode': return episodeFacts(record);
    case 'task': return taskFacts(record, document);
    case 'outsideJob': return outsideJobFacts(record, document);
    case 'link': return linkFacts(record, document);
    case 'segment': return segmentFacts(record, document);
    case 'timeLog': return timeLogFacts(record, document);
    case 'sponsorship': return sponsorshipFacts(record, document);
    case 'hazard': return [`severity ${record.severity}`, record.replaces === null ? null : 'stands in for one of the library', count(record.sources.length, 'source')];
    case 'statement': return [record.signedBy];
    case 'coatingSystem': return [
      listNames(record.layers.map(({ materialId, coats }) => `${coats} × ${nameOf(document.materials, materialId) ?? 'a removed material'}`)) || 'no layer yet',
    ];
    case 'heatingRun': return [
      `${formatMoment(record.start, document.series.zone)} for ${formatLength(minutesBetween(record.start, record.end))}`, `to ${record.setPoint} °C`, `air: ${record.airZone}`,
    ];
    case 'weather': return [count(record.days.length, 'day'), record.days.length > 0 ? `${formatLongDay(record.days[0]!.date)} to ${formatLongDay(record.days.at(-1)!.date)}` : null];
    case 'readings': return [
      `${count(record.count, 'row')}`, `${formatMoment(record.from, document.series.zone)} to ${formatMoment(record.to, document.series.zone)}`, `air: ${record.airZone}`,
    ];
    case 'series': return [record.zone];
  }
}

/** What a row of a list says about a record beside its name. */
export function listFacts(record: SeriesRecord, document: SeriesDocument): Facts {
  return collectFacts(record, document).filter((fact) => fact !== null);
}

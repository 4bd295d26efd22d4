/** From the short form of the demo to records: brands, dates, ids of states, shots and coats. */
import { addDays, instantOf } from '@/lib/calendar';
import type {
  CivilDate, DateSpan, Episode, Link, Material, OutsideJob, Part, PartUse, Person, Segment, SkillNeed, Sponsorship, Task, ThreePoint, TimeLog, Trade, WeeklyHours, WorkRef,
} from '@/lib/build';
import { DEFAULT_TERMS, NO_VAPOUR, NO_CUT_CHECKS } from '@/lib/build';
import { celsius, minutes, type Instant } from '@/lib/units';
import type {
  EpisodeDraft, EstimateDraft, HoursDraft, JobDraft, LinkDraft, MaterialDraft, Moment, PartDraft, PersonDraft, SpanDraft, TaskDraft, TradeDraft, UseDraft,
} from './draft';
import { hazardsOf } from './hazard-facts';
import { materialSource } from './materials';
import type { LogDraft, SegmentDraft, SponsorDraft } from './story';
import { paintCure } from './paint-cure';

/** The days the demo lies on. */
export interface Frame {
  readonly monday: CivilDate;
  readonly zone: string;
}

export const dayOf = (frame: Frame, day: number): CivilDate => addDays(frame.monday, day);
export const momentOf = (frame: Frame, { day, at }: Moment): Instant => instantOf(dayOf(frame, day), at, frame.zone);

const stateId = (part: string, key: string): string => part.replace(/^part-/, 'state-') + `-${key}`;
const row = (draft: { readonly id: string; readonly name: string }, order: number) => ({ id: draft.id, name: draft.name, order, revision: 1 });
const raiseHours = (hours: HoursDraft): readonly WeeklyHours[] => hours.map(([weekday, from, to]) => ({ weekday, from, to }));
const raiseSpan = (frame: Frame, span: SpanDraft): DateSpan => ({ from: dayOf(frame, span.fromDay), to: dayOf(frame, span.toDay), why: span.why });

function raiseUse([partId, from, to]: UseDraft): PartUse {
  return { partId, from: stateId(partId, from), to: to === null ? null : stateId(partId, to) };
}

const raiseEstimate = ([low, likely, high]: EstimateDraft): ThreePoint<number> => ({ low, likely, high });
const raiseMinutes = ([low, likely, high]: EstimateDraft): ThreePoint => ({ low: minutes(low), likely: minutes(likely), high: minutes(high) });

export function raisePerson(frame: Frame, draft: PersonDraft, order: number): Person {
  return { kind: 'person', ...row(draft, order), skills: draft.skills, hours: raiseHours(draft.hours), away: draft.away.map((span) => raiseSpan(frame, span)), consent: { givenOn: dayOf(frame, draft.consent.day), until: null, where: draft.consent.where } };
}

export function raisePart(draft: PartDraft, order: number): Part {
  const kind = draft.at === undefined ? 'store' : draft.at.startsWith('trade-') ? 'trade' : 'place';
  return {
    kind: 'part', ...row(draft, order), assembly: draft.assembly,
    states: draft.states.map(([key, name]) => ({ id: stateId(draft.id, key), name })),
    whereabouts: { kind, id: draft.at ?? null },
  };
}

export function raiseMaterial(draft: MaterialDraft, order: number): Material {
  const [touchDry, recoatFrom, recoatUntil, handle, fullCure] = draft.stages;
  return {
    kind: 'material', ...row(draft, order), sort: draft.sort,
    stages: {
      touchDry: minutes(touchDry), recoatFrom: minutes(recoatFrom), recoatUntil: recoatUntil === null ? null : minutes(recoatUntil),
      handle: minutes(handle), fullCure: minutes(fullCure),
    },
    referenceTemperature: celsius(20), minimumTemperature: celsius(draft.minimumTemperature), doublingPer: 10,
    potLife: draft.potLife === undefined ? null : minutes(draft.potLife), hasSolvent: draft.solvent ?? false, hasIsocyanate: false, vapour: draft.vapour ?? NO_VAPOUR, source: materialSource, cure: paintCure,
  };
}

/** Holidays at the end of each year that the demo touches: 24 December to 2 January. */
function holidaySpans(frame: Frame): readonly DateSpan[] {
  const [first, last] = [dayOf(frame, -14), dayOf(frame, 140)];
  const firstYear = Number(first.slice(0, 4));
  return [firstYear - 1, firstYear, firstYear + 1]
    .map((year) => ({ from: `${year}-12-24`, to: `${year + 1}-01-02`, why: 'closed over the year\'s end' }))
    .filter((span) => span.from <= last && span.to >= first);
}

export function raiseTrade(frame: Frame, draft: TradeDraft, order: number): Trade {
  return {
    kind: 'trade', ...row(draft, order), craft: draft.craft, openHours: raiseHours(draft.hours),
    closed: [...draft.closed.map((span) => raiseSpan(frame, span)), ...holidaySpans(frame)].toSorted((a, b) => a.from.localeCompare(b.from)),
    trip: minutes(draft.trip), contact: draft.contact, terms: { ...DEFAULT_TERMS, country: 'GB', region: 'ENG' },
  };
}

export function raiseJob(frame: Frame, draft: JobDraft, order: number): OutsideJob {
  return {
    kind: 'outsideJob', ...row(draft, order), tradeId: draft.trade, episodeId: draft.episode, parts: draft.parts.map(raiseUse),
    quote: raiseEstimate(draft.quote), crew: draft.crew,
    droppedOffAt: draft.droppedOff === undefined ? null : momentOf(frame, draft.droppedOff),
    promisedFor: draft.promisedDay === undefined ? null : dayOf(frame, draft.promisedDay), collectedAt: null,
  };
}

function raiseCrew(crew: readonly string[]): readonly SkillNeed[] {
  return [...new Set(crew)].map((name) => ({ skill: name === 'anybody' ? null : name, count: crew.filter((one) => one === name).length }));
}

export function raiseTask(frame: Frame, draft: TaskDraft, order: number): Task {
  const short = draft.id.replace(/^task-/, '');
  return {
    kind: 'task', ...row(draft, order), category: draft.category, episodeId: draft.episode, placeId: draft.place,
    parts: draft.parts.map(raiseUse), effort: raiseMinutes(draft.effort), inOneGo: draft.oneGo ?? false, irreversible: draft.irreversible ?? false,
    crew: raiseCrew(draft.crew), equipmentIds: draft.equipment ?? [],
    coats: (draft.coats ?? []).map((materialId, index) => ({ id: `coat-${short}-${index + 1}`, materialId })),
    coverage: draft.coverage,
    shots: (draft.shots ?? []).map(([purpose, name, time, must, ...states], index) => ({
      id: `shot-${short}-${index + 1}`, name, purpose, time: minutes(time), mustHave: must === 'must', filmedAt: null,
      ...(states.length === 0 ? {} : { states: states.map(([partId, key]) => ({ partId, stateId: stateId(partId, key) })) }),
    })),
    conditions: { minimumTemperature: draft.minimumTemperature === undefined ? null : celsius(draft.minimumTemperature), needsDaylight: draft.needsDaylight ?? false },
    isDusty: draft.dusty ?? false, isNoisy: draft.noisy ?? false, layOut: draft.layOut, cautions: draft.cautions ?? [],
    hazards: hazardsOf(draft.id),
    manualReference: draft.manual ?? '', pinnedStart: null, doneAt: draft.done === undefined ? null : momentOf(frame, draft.done),
  };
}

const workRef = (id: string): WorkRef => ({ kind: id.startsWith('job-') ? 'outsideJob' : 'task', id });

export function raiseLink(draft: LinkDraft, order: number): Link {
  return {
    kind: 'link', ...row(draft, order), from: workRef(draft.from), to: workRef(draft.to), stage: draft.stage ?? null,
    minWait: minutes(draft.minWait ?? 0), maxWait: draft.maxWait === undefined ? null : minutes(draft.maxWait), clock: 'elapsed',
  };
}

export function raiseEpisode(frame: Frame, draft: EpisodeDraft, order: number): Episode {
  return {
    kind: 'episode', ...row(draft, order), releaseDate: dayOf(frame, draft.releaseDay), isEvergreen: draft.evergreen ?? false, status: draft.status ?? 'planned',
    ...(draft.captions === undefined ? {} : { checks: { ...NO_CUT_CHECKS, captions: { file: draft.captions.file, readOn: dayOf(frame, draft.captions.day) } } }),
  };
}

export function raiseSegment(draft: SegmentDraft, order: number): Segment {
  return {
    kind: 'segment', ...row(draft, order), episodeId: draft.episode, role: draft.role, length: draft.length, isResult: draft.result ?? false,
    hook: (draft.hook ?? 0) / 100, hang: (draft.hang ?? 0) / 100, thread: draft.thread ?? '', isEvergreen: draft.evergreen ?? false, isFlashback: false,
    storyDate: null, ending: draft.ending ?? 'free', taskIds: draft.tasks ?? [],
  };
}

export function raiseLog(frame: Frame, draft: LogDraft, order: number): TimeLog {
  return {
    kind: 'timeLog', ...row(draft, order), taskId: draft.task, activity: draft.activity, start: momentOf(frame, draft.from), end: momentOf(frame, draft.to),
    wasInterrupted: draft.interrupted ?? false,
  };
}

export function raiseSponsor(frame: Frame, draft: SponsorDraft, order: number): Sponsorship {
  const [spotStart, spotEnd] = draft.spot ?? [null, null];
  const [shownFrom, shownUntil] = draft.shown ?? [null, null];
  return {
    kind: 'sponsorship', ...row(draft, order), sponsor: draft.sponsor, what: draft.what, exclusiveIn: draft.exclusiveIn ?? '', episodeId: draft.episode,
    part: draft.part ?? 'anywhere', dueDate: draft.dueDay === undefined ? null : dayOf(frame, draft.dueDay), minimumSeconds: draft.seconds, spotStart, spotEnd,
    disclosureText: draft.text, spokenAt: draft.spoken ?? null, shownFrom, shownUntil, needsApproval: draft.approval ?? false, approvedOn: null,
  };
}

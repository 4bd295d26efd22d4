/**
 * What a build and its series are made of, as plain data. One `SeriesDocument` holds a whole series;
 * every rule of the domain reads one and every command makes the next one.
 * Dates are civil dates (`2026-12-01`) in the series' zone, moments are instants.
 */
import type { CivilDate, Weekday, WeeklyHours } from '@/lib/calendar';
import type { Celsius, Instant, Minutes } from '@/lib/units';
import type { Consent, HazardFields, MaterialVapour, RoomAir, SignedFields, ToolExposure } from './safety-records';
import type { JobProcess, TradeTerms } from './model-outwork';
import type { Row } from './model-row';
import type { CoatingSystem, HeatingRun, MaterialCure, Readings, Weather } from './model-cure';
import type { DateSpan, ThreePoint, PartUse, Task, Link } from './model-work';
import type { Series } from './model-series';
import type { Episode, Segment, TimeLog, Sponsorship, Camera, SpokenPromise } from './model-story';

export type { CivilDate,  Weekday, WeeklyHours };
export type * from './model-cure';
export type * from './model-outwork';
export type * from './model-series';
export type * from './model-story';
export type * from './model-work';

export interface Person extends Row {
  readonly kind: 'person';
  readonly skills: readonly string[];
  /** When errands outside the workshop are possible (drop-off, collection). */
  readonly hours: readonly WeeklyHours[];
  readonly away: readonly DateSpan[];
  /** Left out: nobody has asked. */
  readonly consent?: Consent | undefined;
}

export interface Place extends Row {
  readonly kind: 'place';
  /** Tasks that fit at once. */
  readonly capacity: number;
  /** Places that share air share dust and vapour. */
  readonly airZone: string;
  readonly air: RoomAir;
}

export interface Equipment extends Row {
  readonly kind: 'equipment';
  readonly count: number;
  readonly exposure: ToolExposure;
}

export interface PartState {
  readonly id: string;
  readonly name: string;
}

export interface Part extends Row {
  readonly kind: 'part';
  /** What it belongs to: Frame, Engine, Sidecar body. */
  readonly assembly: string;
  /** In the order they come; the first is the state at the start of the series. */
  readonly states: readonly PartState[];
  /** Where it is now: a place, a trade (away), or neither (in store). */
  readonly whereabouts: { readonly kind: 'place' | 'trade' | 'store'; readonly id: string | null };
}

/** Drying stages, minutes from application at the reference temperature, in the order they come. */
export interface DryingStages {
  readonly touchDry: Minutes;
  readonly recoatFrom: Minutes;
  /** Closing of the recoat window; null: no upper bound. */
  readonly recoatUntil: Minutes | null;
  readonly handle: Minutes;
  readonly fullCure: Minutes;
}

export interface Material extends Row {
  readonly kind: 'material';
  readonly sort: 'primer' | 'paint' | 'filler' | 'sealer' | 'adhesive' | 'thread locker' | 'powder' | 'galvanizing wash' | 'release' | 'other';
  readonly stages: DryingStages;
  readonly referenceTemperature: Celsius;
  /** Below it the film may not form. */
  readonly minimumTemperature: Celsius;
  /** The rate doubles for each this many kelvins; 10 is a rule of thumb. */
  readonly doublingPer: number;
  readonly potLife: Minutes | null;
  readonly hasSolvent: boolean;
  readonly hasIsocyanate: boolean;
  readonly vapour: MaterialVapour;
  /** Where the values come from. Empty: no source, and the pages say so. */
  readonly source: string;
  /** What the data sheet says beyond the drying times. Left out: see `DEFAULT_CURE`. */
  readonly cure?: MaterialCure | undefined;
  /** Last day on which the batch in the workshop may be used. Left out: not written down. */
  readonly usableUntil?: CivilDate | undefined;
}

export interface Trade extends Row {
  readonly kind: 'trade';
  /** Galvanizer, plater, machinist. */
  readonly craft: string;
  readonly openHours: readonly WeeklyHours[];
  readonly closed: readonly DateSpan[];
  /** Crew time of one trip there and back. */
  readonly trip: Minutes;
  readonly contact: string;
  /** Left out: see `DEFAULT_TERMS`. */
  readonly terms?: TradeTerms | undefined;
}

export interface OutsideJob extends Row {
  readonly kind: 'outsideJob';
  readonly tradeId: string;
  readonly episodeId: string | null;
  readonly parts: readonly PartUse[];
  /** Working days of the trade between drop-off and ready. */
  readonly quote: ThreePoint<number>;
  /** People a trip needs. */
  readonly crew: number;
  readonly droppedOffAt: Instant | null;
  /** The day the trade last promised; overrules the quote. */
  readonly promisedFor: CivilDate | null;
  readonly collectedAt: Instant | null;
  /** Left out: see `DEFAULT_PROCESS`. */
  readonly process?: JobProcess | undefined;
}

export interface Session extends Row {
  readonly kind: 'session';
  readonly start: Instant;
  readonly end: Instant;
  readonly placeIds: readonly string[];
  readonly crewIds: readonly string[];
  /** Camera and lights are out: filmed tasks need one of these. */
  readonly isRecording: boolean;
  readonly hasDaylight: boolean;
  readonly isNoiseAllowed: boolean;
  /** Set point while it lasts; null: not heated. */
  readonly heating: Celsius | null;
}

/** A hazard of the users' own, or the library's as it is where they live. */
export interface HazardRecord extends Row, HazardFields {
  readonly kind: 'hazard';
}

/** Signed by a person; its name says what in a line. */
export interface Statement extends Row, SignedFields {
  readonly kind: 'statement';
}

export type SeriesRecord =
  | Series | Person | Place | Equipment | Part | Material | Trade | OutsideJob | Task | Link | Session | Episode
  | Segment | TimeLog | Sponsorship | HazardRecord | Statement
  | CoatingSystem | HeatingRun | Weather | Readings
  | Camera | SpokenPromise;

export type RecordKind = SeriesRecord['kind'];

export type RecordOf<K extends RecordKind> = Extract<SeriesRecord, { kind: K }>;

/** A whole series. Lists are in their order. */
export interface SeriesDocument {
  readonly series: Series;
  /** Number of the last change; a plan names the one it was made from. */
  readonly changeNumber: number;
  /** Number of the last change that touched what a plan is made from. */
  readonly planChange: number;
  readonly people: readonly Person[];
  readonly places: readonly Place[];
  readonly equipment: readonly Equipment[];
  readonly parts: readonly Part[];
  readonly materials: readonly Material[];
  readonly trades: readonly Trade[];
  readonly outsideJobs: readonly OutsideJob[];
  readonly tasks: readonly Task[];
  readonly links: readonly Link[];
  readonly sessions: readonly Session[];
  readonly episodes: readonly Episode[];
  readonly segments: readonly Segment[];
  readonly timeLogs: readonly TimeLog[];
  readonly sponsorships: readonly Sponsorship[];
  readonly hazards: readonly HazardRecord[];
  readonly statements: readonly Statement[];
  readonly coatingSystems: readonly CoatingSystem[];
  readonly heatingRuns: readonly HeatingRun[];
  readonly weather: readonly Weather[];
  readonly readings: readonly Readings[];
  readonly cameras: readonly Camera[];
  readonly promises: readonly SpokenPromise[];
}

/**
 * What a build and its series are made of, as plain data. One `SeriesDocument` holds a whole series;
 * every rule of the domain reads one and every command makes the next one.
 * Dates are civil dates (`2026-12-01`) in the series' zone, moments are instants.
 */
import type { CivilDate, CivilSpan, Weekday, WeeklyHours } from '@/lib/calendar';
import type { Celsius, Instant, Minutes } from '@/lib/units';
import type { Consent, CutChecks, HazardFields, MaterialVapour, RoomAir, SignedFields, SourceReading, TaskHazards, ToolExposure } from './safety-records';
import type { JobProcess, TradeTerms } from './model-outwork';
import type { PlanGoal } from './plan-goals';
import type { Row } from './model-row';
import type { CoatingSystem, HeatingRun, MaterialCure, Readings, Weather, Workshop } from './model-cure';

export type { CivilDate,  Weekday, WeeklyHours };
export type * from './model-cure';
export type * from './model-outwork';

/** Both dates are in it. */
export interface DateSpan extends CivilSpan {
  readonly why: string;
}

/** Smallest, likeliest and largest length, low <= likely <= high. */
export interface ThreePoint<T extends number = Minutes> {
  readonly low: T;
  readonly likely: T;
  readonly high: T;
}

export interface Series extends Row {
  readonly kind: 'series';
  /** IANA zone, `Europe/London`. */
  readonly zone: string;
  /** Days between releases: 7 or 14 as a rule. */
  readonly cadenceDays: number;
  /** Calendar days before a release that its recording must be complete: edit, review, captions, upload together. */
  readonly leadDays: number;
  /** Largest share of a session's hours that may be booked, 0 to 1; 0.7 is common practice. */
  readonly fillLimit: number;
  /** Temperature assumed in the workshop where nothing better is known. */
  readonly workshopTemperature: Celsius;
  /** Runtime wished for an episode, minutes on screen. */
  readonly runtime: { readonly target: number; readonly min: number; readonly max: number };
  /** Frames a second as a fraction, 25/1 or 30000/1001. */
  readonly frameRate: { readonly numerator: number; readonly denominator: number };
  /** Minutes of titles and credits in every episode. */
  readonly titles: number;
  /** Finished episodes that should be in hand at the end of a week. */
  readonly bankMinimum: number;
  /** The plan books what filming and finished work have shown instead of what was typed. */
  readonly usesExperience: boolean;
  readonly filming: FilmingPractice;
  readonly camera: CameraKit;
  /** Days from now in which a new plan leaves the work of the accepted one where it is; 0: none. */
  readonly frozenDays: number;
  /** What a plan puts first, each goal once. Left out: the usual order. */
  readonly goals?: readonly PlanGoal[] | undefined;
  /** The room and what heats it. Left out: not described yet, see `DEFAULT_WORKSHOP`. */
  readonly workshop?: Workshop | undefined;
  /** The oldest first; left out: nothing was read again yet. */
  readonly sourceReadings?: readonly SourceReading[] | undefined;
}

/** Minutes of each step in front of and behind the camera; starts as common practice. */
export interface FilmingPractice {
  readonly position: number;
  readonly shot: number;
  readonly take: number;
  readonly reset: number;
  /** Chance that a take is not good, 0 to 0.9. */
  readonly retakeChance: number;
  readonly oneWay: number;
  readonly packUp: number;
  /** Counts of the series' own for a way of filming; the others are common practice. */
  readonly own: readonly FilmingHabit[];
}

/** How much is filmed where no shots are listed: so much at least, and so much more for each hour of hands-on work. */
export interface FilmingHabit {
  readonly coverage: Coverage;
  readonly positions: number;
  readonly positionsPerHour: number;
  readonly shots: number;
  readonly shotsPerHour: number;
}

export interface CameraKit {
  readonly cameras: number;
  /** Megabits a second of one camera. */
  readonly bitRate: number;
  /** Space of each card, gigabytes, for all cameras together. */
  readonly cards: readonly number[];
  /** 0: on mains. */
  readonly batteries: number;
  /** Minutes that one battery records. */
  readonly batteryMinutes: number;
  /** Largest part of a card that is filled, 0 to 1. */
  readonly fillLimit: number;
}

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

export type DryingStage = 'touchDry' | 'recoatFrom' | 'handle' | 'fullCure';

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

/** A part taken from one state to another. `to` null: needed in that state, left as it is. `from` null: any state. */
export interface PartUse {
  readonly partId: string;
  readonly from: string | null;
  readonly to: string | null;
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

export interface SkillNeed {
  /** null: anybody. */
  readonly skill: string | null;
  readonly count: number;
}

export type Coverage = 'none' | 'locked-off' | 'moved camera' | 'inserts and teaching' | 'piece to camera' | 'time-lapse' | 'montage';

/** A part in one of its states. */
export interface ShownState {
  readonly partId: string;
  readonly stateId: string;
}

export interface Shot {
  readonly id: string;
  readonly name: string;
  readonly purpose: 'before' | 'during' | 'after' | 'insert' | 'piece to camera' | 'time-lapse' | 'pickup';
  /** Crew time to film it; for a during-shot, added to the task. */
  readonly time: Minutes;
  readonly mustHave: boolean;
  /** When it was filmed; null: still to be filmed. */
  readonly filmedAt: Instant | null;
  /** Parts that must be in the picture, each in that state. Left out: as its task has them. */
  readonly states?: readonly ShownState[] | undefined;
}

/** A coat or bond laid in a task. */
export interface Coat {
  readonly id: string;
  readonly materialId: string;
}

export type Category = 'strip' | 'clean' | 'repair' | 'machining' | 'welding' | 'filler' | 'paint' | 'electrics' | 'assembly' | 'setting up' | 'filming' | 'other';

export interface Task extends Row {
  readonly kind: 'task';
  readonly category: Category;
  readonly episodeId: string | null;
  readonly placeId: string;
  readonly parts: readonly PartUse[];
  /** Hands-on time. */
  readonly effort: ThreePoint;
  readonly inOneGo: boolean;
  /** Cannot be done or filmed a second time. */
  readonly irreversible: boolean;
  readonly crew: readonly SkillNeed[];
  readonly equipmentIds: readonly string[];
  readonly coats: readonly Coat[];
  readonly coverage: Coverage;
  readonly shots: readonly Shot[];
  readonly conditions: {
    /** Lowest workshop temperature, null: any. */
    readonly minimumTemperature: Celsius | null;
    readonly needsDaylight: boolean;
  };
  readonly isDusty: boolean;
  readonly isNoisy: boolean;
  /** What to lay out: gloves, gauge, wood pad. */
  readonly layOut: readonly string[];
  readonly cautions: readonly string[];
  readonly hazards: TaskHazards;
  /** Page or section of the maker's manual. */
  readonly manualReference: string;
  /** Start fixed by a person. */
  readonly pinnedStart: Instant | null;
  readonly doneAt: Instant | null;
}

export interface WorkRef {
  readonly kind: 'task' | 'outsideJob';
  readonly id: string;
}

/** An order that does not follow from part states. */
export interface Link extends Row {
  readonly kind: 'link';
  readonly from: WorkRef;
  readonly to: WorkRef;
  /** Wait until the coat of `from` has reached this stage; null: only the minutes count. */
  readonly stage: DryingStage | null;
  readonly minWait: Minutes;
  readonly maxWait: Minutes | null;
  readonly clock: 'elapsed' | 'working';
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

export interface Episode extends Row {
  readonly kind: 'episode';
  readonly releaseDate: CivilDate;
  readonly isEvergreen: boolean;
  readonly status: 'planned' | 'recorded' | 'cut' | 'cleared' | 'released';
  /** Left out: nothing is checked yet. */
  readonly checks?: CutChecks | undefined;
}

export type SegmentRole = 'opening' | 'work' | 'teaching' | 'trouble' | 'result' | 'talk' | 'sponsor' | 'closing';

/** A piece of the story, a few minutes on screen. Its order is the order of telling. */
export interface Segment extends Row {
  readonly kind: 'segment';
  /** null: not in an episode yet. */
  readonly episodeId: string | null;
  readonly role: SegmentRole;
  /** Expected length on screen, minutes. */
  readonly length: number;
  /** It shows something finished. */
  readonly isResult: boolean;
  /** How well it opens an episode's story, 0 to 1. */
  readonly hook: number;
  /** How much it leaves open when an episode ends on it, 0 to 1. */
  readonly hang: number;
  /** Segments of one thread keep their order; empty: the main thread. */
  readonly thread: string;
  /** Fits any episode. */
  readonly isEvergreen: boolean;
  /** Goes back in the story on purpose. */
  readonly isFlashback: boolean;
  /** The day the story has reached; null: as its work. */
  readonly storyDate: CivilDate | null;
  readonly ending: 'free' | 'ends the episode' | 'never ends it';
  /** The work it shows. */
  readonly taskIds: readonly string[];
  /** Seconds from the start of the episode to its own in the finished cut. Left out: not cut yet. */
  readonly cutStart?: number | undefined;
}

/** Time spent on a task, as it was. */
export interface TimeLog extends Row {
  readonly kind: 'timeLog';
  readonly taskId: string;
  readonly activity: 'hands-on' | 'filming';
  readonly start: Instant;
  /** null: still going on. */
  readonly end: Instant | null;
  /** Broken off or disturbed: kept, not learned from. */
  readonly wasInterrupted: boolean;
}

/** What the series owes a sponsor, and how far it is met. Seconds count from the start of the episode. */
export interface Sponsorship extends Row {
  readonly kind: 'sponsorship';
  readonly sponsor: string;
  /** What was agreed, in words. */
  readonly what: string;
  /** The trade in which no competitor may appear in the same episode; empty: none agreed. */
  readonly exclusiveIn: string;
  readonly episodeId: string | null;
  readonly part: 'anywhere' | 'first third' | 'second third' | 'last third';
  /** Latest release that keeps the agreement. */
  readonly dueDate: CivilDate | null;
  readonly minimumSeconds: number;
  readonly spotStart: number | null;
  readonly spotEnd: number | null;
  readonly disclosureText: string;
  /** When the disclosure is said. */
  readonly spokenAt: number | null;
  /** When it is shown. */
  readonly shownFrom: number | null;
  readonly shownUntil: number | null;
  readonly needsApproval: boolean;
  readonly approvedOn: CivilDate | null;
}

/** A hazard of the users' own, or the library's as it is where they live. */
export interface HazardRecord extends Row, HazardFields {
  readonly kind: 'hazard';
}

/** Signed by a person; its name says what in a line. */
export interface Statement extends Row, SignedFields {
  readonly kind: 'statement';
}

/** A camera whose takes are logged: how it counts frames, and how its clock stands. */
export interface Camera extends Row {
  readonly kind: 'camera';
  /** Frames a second as a fraction. */
  readonly rate: { readonly numerator: number; readonly denominator: number };
  /** Drop-frame labels; at 30000/1001 and 60000/1001 only. */
  readonly isDropFrame: boolean;
  /** Seconds that its clock runs ahead of the workshop's; negative: behind. */
  readonly clockOffset: number;
}

/** What was promised to viewers on camera. Its name is the words. */
export interface SpokenPromise extends Row {
  readonly kind: 'promise';
  /** Episode in which it is said; null: not cut yet. */
  readonly saidInId: string | null;
  /** Take, clip or timecode where it stands. */
  readonly where: string;
  /** Episode that must have kept it; null: by the end of the series. */
  readonly dueId: string | null;
  readonly closure: 'open' | 'kept' | 'replaced' | 'withdrawn on screen';
  /** Why it was replaced or withdrawn, in the words said. */
  readonly reason: string;
  /** Episode in which it was kept, replaced or withdrawn. */
  readonly closedInId: string | null;
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

/**
 * What a build and its series are made of, as plain data. One `SeriesDocument` holds a whole series;
 * every rule of the domain reads one and every command makes the next one.
 * Dates are civil dates (`2026-12-01`) in the series' zone, moments are instants.
 */
import type { CivilDate, CivilSpan, WallTime, Weekday, WeeklyHours } from '@/lib/calendar';
import type { Celsius, Instant, Minutes } from '@/lib/units';

export type { CivilDate, WallTime, Weekday, WeeklyHours };

interface Row {
  readonly id: string;
  /** Counts the saved changes of this record, from 1. A write names the revision it was based on. */
  readonly revision: number;
  /** Place in its list, 0 first. */
  readonly order: number;
  readonly name: string;
}

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
}

export interface Person extends Row {
  readonly kind: 'person';
  readonly skills: readonly string[];
  /** When errands outside the workshop are possible (drop-off, collection). */
  readonly hours: readonly WeeklyHours[];
  readonly away: readonly DateSpan[];
}

export interface Place extends Row {
  readonly kind: 'place';
  /** Tasks that fit at once. */
  readonly capacity: number;
  /** Places that share air share dust and vapour. */
  readonly airZone: string;
}

export interface Equipment extends Row {
  readonly kind: 'equipment';
  readonly count: number;
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
  readonly sort: 'primer' | 'paint' | 'filler' | 'sealer' | 'adhesive' | 'thread locker' | 'powder' | 'release' | 'other';
  readonly stages: DryingStages;
  readonly referenceTemperature: Celsius;
  /** Below it the film may not form. */
  readonly minimumTemperature: Celsius;
  /** The rate doubles for each this many kelvins; 10 is a rule of thumb. */
  readonly doublingPer: number;
  readonly potLife: Minutes | null;
  readonly hasSolvent: boolean;
  readonly hasIsocyanate: boolean;
  /** Where the values come from. Empty: no source, and the pages say so. */
  readonly source: string;
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
}

export interface SkillNeed {
  /** null: anybody. */
  readonly skill: string | null;
  readonly count: number;
}

export type Coverage = 'none' | 'locked-off' | 'moved camera' | 'inserts and teaching' | 'piece to camera' | 'time-lapse';

export interface Shot {
  readonly id: string;
  readonly name: string;
  readonly purpose: 'before' | 'during' | 'after' | 'insert' | 'piece to camera' | 'time-lapse' | 'pickup';
  /** Crew time to film it; for a during-shot, added to the task. */
  readonly time: Minutes;
  readonly mustHave: boolean;
  /** When it was filmed; null: still to be filmed. */
  readonly filmedAt: Instant | null;
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
  | Camera | SpokenPromise;

export type RecordKind = SeriesRecord['kind'];

export type RecordOf<K extends RecordKind> = Extract<SeriesRecord, { kind: K }>;

/** A whole series. Lists are in their order. */
export interface SeriesDocument {
  readonly series: Series;
  /** Number of the last change; a plan names the one it was made from. */
  readonly changeNumber: number;
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
  readonly cameras: readonly Camera[];
  readonly promises: readonly SpokenPromise[];
}

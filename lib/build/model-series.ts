/** A series as its crew sets it up: rhythm, runtime, filming, cameras. */
import type { FilmingTimes } from '@/lib/estimate';
import type { Celsius } from '@/lib/units';
import type { SourceReading } from './safety-records';
import type { PlanGoal } from './plan-goals';
import type { Row } from './model-row';
import type { Workshop } from './model-cure';
import type { Coverage } from './model-work';

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

/** Filming times of a series; they start as common practice. */
export interface FilmingPractice extends FilmingTimes {
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

/** Episodes and what stands in them: segments, sponsors, promises; the time and the cameras that filming takes. */
import type { CivilDate } from '@/lib/calendar';
import type { Instant } from '@/lib/units';
import type { CutChecks } from './safety-records';
import type { Row } from './model-row';

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

/** What the week page shows: plain, serialisable data with every text ready to print. */
import type { CivilDate } from '@/lib/build';
import type { BlockKind } from '@/lib/plan';
import type { Instant } from '@/lib/units';

/** A record a page can link to. */
export interface RecordLink {
  readonly kind: string;
  readonly id: string;
  readonly name: string;
}

export interface BlockPart {
  readonly id: string;
  readonly name: string;
  /** State the work needs, null: any. */
  readonly from: string | null;
  /** State it leaves, null: the same. */
  readonly to: string | null;
}

export interface BlockReason {
  readonly text: string;
  /** `Tue 1 Dec 18:40`, null where the reason has no end of its own. */
  readonly until: string | null;
  readonly change: string | null;
}

/** Everything a block says when it is opened. */
export interface BlockView {
  readonly id: string;
  readonly kind: BlockKind;
  readonly title: string;
  /** Title for a plate that shows its kind anyway: the name of the task or job alone. */
  readonly label: string;
  /** The kind in words: `Work`, `Filming before`, `Drop-off`, `Collection`, `Away`, `Drying`. */
  readonly kindWord: string;
  /** `Tue 1 Dec 18:30–20:10, then Thu 3 Dec 18:30–19:00`. */
  readonly when: string;
  /** Hands-on length, or elapsed for a wait: `1 h 40 min`. */
  readonly length: string;
  readonly crew: readonly string[];
  readonly place: string | null;
  readonly parts: readonly BlockPart[];
  readonly episode: RecordLink | null;
  readonly because: readonly BlockReason[];
  /** Of a coat that dries; empty for anything else. */
  readonly stages: readonly { readonly label: string; readonly when: string }[];
  readonly layOut: readonly string[];
  readonly cautions: readonly string[];
  readonly equipment: readonly string[];
  readonly materials: readonly string[];
  readonly manualReference: string;
  /** Shots to take: `before: wide, medium, close of the weld`. */
  readonly shots: readonly { readonly purpose: string; readonly name: string; readonly minutes: number; readonly mustHave: boolean; readonly risk: string | null }[];
  readonly coverage: string | null;
  readonly isFilmed: boolean;
  readonly isIrreversible: boolean;
  readonly isPinned: boolean;
  readonly isDone: boolean;
  readonly subject: RecordLink;
  /** Its task, for the actions; null for outside jobs. */
  readonly taskId: string | null;
  /** Revision of that task, for the actions; 0 without one. */
  readonly revision: number;
  readonly start: Instant;
  readonly end: Instant;
}

/** A worked piece as drawn. Positions are shares of the strip. */
export interface DrawnPiece {
  readonly blockId: string;
  readonly key: string;
  readonly start: Instant;
  readonly end: Instant;
  /** Drawn box, never narrower than a fingertip. */
  readonly left: number;
  readonly width: number;
  /** True extent within the box, shares of the box. */
  readonly trueLeft: number;
  readonly trueWidth: number;
  readonly lane: number;
  /** `18:30–20:10`. */
  readonly time: string;
  /** Session it lies in; null: the session it was planned in is gone. */
  readonly sessionId: string | null;
  readonly crewInitials: string;
}

/** A wait as drawn. */
export interface DrawnBar {
  readonly blockId: string;
  readonly start: Instant;
  readonly end: Instant;
  readonly left: number;
  readonly width: number;
  readonly lane: number;
  readonly startsBefore: boolean;
  readonly endsAfter: boolean;
  /** `until Wed 2 Dec 09:00`. */
  readonly until: string;
}

export interface StripRow {
  readonly id: string;
  readonly kind: 'place' | 'road' | 'away' | 'elsewhere';
  readonly name: string;
  readonly lanes: number;
  readonly pieces: readonly DrawnPiece[];
  readonly waitLanes: number;
  readonly bars: readonly DrawnBar[];
}

export interface DrawnFrame {
  readonly sessionId: string;
  readonly left: number;
  readonly width: number;
  /** Rows it opens. */
  readonly rowIds: readonly string[];
  readonly label: string;
}

export interface DayColumn {
  readonly date: CivilDate;
  /** `Tue 1 Dec`. */
  readonly label: string;
  readonly weekday: string;
  readonly left: number;
  readonly width: number;
  readonly isToday: boolean;
  readonly isQuiet: boolean;
  /** `Clocks go back: this day has 25 hours.` */
  readonly clockChange: string | null;
  /** Hours drawn to scale. */
  readonly windows: readonly { readonly start: Instant; readonly end: Instant; readonly left: number; readonly width: number; readonly ticks: readonly { readonly left: number; readonly label: string }[] }[];
  readonly deadlines: readonly Deadline[];
}

export interface Deadline {
  readonly episode: RecordLink;
  readonly kind: 'shoot due' | 'release';
  readonly text: string;
  /** How it stands: `ready Sat 5 Dec`, `4 h late`, `some work has no place`. */
  readonly outlook: string;
  readonly isLate: boolean;
}

export interface ReadyItem {
  readonly kind: 'part' | 'drying' | 'material' | 'equipment' | 'lay out' | 'camera' | 'heating';
  readonly text: string;
  /** Must-have that is not certain yet: away, or still drying close to the start. */
  readonly isAtRisk: boolean;
  readonly subject: RecordLink | null;
}

export interface SessionCard {
  readonly id: string;
  readonly name: string;
  readonly date: CivilDate;
  /** `Tue 1 Dec 18:30–21:30`. */
  readonly when: string;
  readonly crew: readonly string[];
  readonly places: readonly string[];
  readonly isRecording: boolean;
  readonly hasDaylight: boolean;
  readonly isNoiseAllowed: boolean;
  /** `heated to 15 °C`, null: not heated. */
  readonly heating: string | null;
  /** Person-minutes booked, there at all, and the most that may be booked. */
  readonly booked: number;
  readonly available: number;
  readonly limit: number;
  /** `4 h 10 min of 9 h booked (46 %, limit 70 %)`. */
  readonly booking: string;
  readonly isOverfull: boolean;
  readonly isPast: boolean;
  readonly work: readonly { readonly blockId: string; readonly time: string }[];
  readonly ready: readonly ReadyItem[];
}

/** An errand or a wait in the day list of a narrow screen. */
export interface DayNote {
  readonly blockId: string;
  readonly kind: BlockKind;
  readonly text: string;
}

export interface WaitingWork {
  readonly subject: RecordLink;
  readonly title: string;
  /** First date it has, null: none. */
  readonly when: string | null;
  readonly reasons: readonly BlockReason[];
}

/** What to do when the plan of a week falls through. */
export interface FallbackItem {
  readonly taskId: string;
  readonly title: string;
  readonly length: string;
  readonly place: string | null;
  readonly isFilmed: boolean;
}

export interface PlanStamp {
  readonly number: number;
  /** `Mon 30 Nov 20:14`. */
  readonly madeAt: string;
  /** Sentence when the build has changed since, else null. */
  readonly staleness: string | null;
  /** Number of the draft that waits for a decision, null: none. */
  readonly draft: number | null;
}

export interface WeekView {
  readonly seriesId: string;
  readonly seriesName: string;
  /** `2026-W49`. */
  readonly week: string;
  /** `30 November to 6 December 2026`. */
  readonly label: string;
  readonly previousWeek: string;
  readonly nextWeek: string;
  readonly currentWeek: string;
  readonly zone: string;
  readonly plan: PlanStamp | null;
  /** Units of the axis; the page turns it into a least width. */
  readonly units: number;
  readonly days: readonly DayColumn[];
  readonly rows: readonly StripRow[];
  readonly frames: readonly DrawnFrame[];
  /** Where now stands on the strip; null: not this week. */
  readonly nowAt: number | null;
  readonly blocks: Readonly<Record<string, BlockView>>;
  readonly sessions: readonly SessionCard[];
  readonly notes: Readonly<Record<CivilDate, readonly DayNote[]>>;
  /** Places no session opens and nothing stands in this week. */
  readonly closedPlaces: readonly string[];
  readonly unplaced: readonly WaitingWork[];
  readonly later: readonly WaitingWork[];
  readonly laterCount: number;
  readonly fallback: readonly FallbackItem[];
  /** Sessions still to come that work can be moved to by hand, soonest first. */
  readonly moveTo: readonly { readonly id: string; readonly label: string }[];
  /** Blocks whose session is gone or was moved since the plan. */
  readonly strayCount: number;
}

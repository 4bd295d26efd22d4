/** Tasks: what is done to which parts, by whom, and how it is filmed. */
import type { CivilSpan } from '@/lib/calendar';
import type { Celsius, Instant, Minutes } from '@/lib/units';
import type { TaskHazards } from './safety-records';
import type { DryingStage } from './model-cure';
import type { Row } from './model-row';

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

/** A part taken from one state to another. `to` null: needed in that state, left as it is. `from` null: any state. */
export interface PartUse {
  readonly partId: string;
  readonly from: string | null;
  readonly to: string | null;
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

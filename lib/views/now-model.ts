/** What the now page shows: plain, serialisable data. */
import type { BlockView, PlanStamp, ReadyItem, RecordLink, SessionCard } from './week-model';

export interface NowWork {
  readonly block: BlockView;
  /** `18:30–20:10`, with the day when it is not today. */
  readonly time: string;
  /** `now`: its time is on. `open`: its time is over and nobody ticked it. `later`: not begun. */
  readonly phase: 'now' | 'open' | 'later';
}

/** A time log that runs. */
export interface RunningClock {
  readonly id: string;
  readonly revision: number;
  readonly taskId: string;
  readonly title: string;
  readonly activity: 'hands-on' | 'filming';
  /** `since 18:42`. */
  readonly since: string;
}

export type ReminderKind = 'not ticked' | 'ready' | 'recoat' | 'collect' | 'deliver' | 'film first' | 'hands off' | 'stay out';

export interface Reminder {
  readonly kind: ReminderKind;
  readonly key: string;
  readonly text: string;
  /** `until Wed 2 Dec 09:00`, `by Thu 3 Dec 21:00`; null where there is no moment. */
  readonly moment: string | null;
  readonly isUrgent: boolean;
  readonly subject: RecordLink | null;
  readonly readyKind: ReadyItem['kind'] | null;
}

export interface NowView {
  readonly seriesId: string;
  readonly seriesName: string;
  /** `Tue 1 Dec 18:42`. */
  readonly clock: string;
  readonly currentWeek: string;
  readonly plan: PlanStamp | null;
  /** `running`: inside a session. `between`: one comes. `over`: none is left. */
  readonly phase: 'running' | 'between' | 'over';
  readonly session: SessionCard | null;
  /** `until 21:30, 1 h 10 min left` or `in 3 h 20 min`. */
  readonly distance: string | null;
  /** What the camera owes in this session: `85 min to be filmed, 3 before-shots`; null: nothing. */
  readonly filming: string | null;
  readonly now: readonly NowWork[];
  readonly next: readonly NowWork[];
  readonly clocks: readonly RunningClock[];
  readonly dontForget: readonly Reminder[];
}

/** The waits page as plain data. */
import type { Issue } from '@/lib/result';
import type { Choice } from './record-form-model';

export interface StageMark {
  readonly stage: 'flashOff' | 'touchDry' | 'recoatFrom' | 'recoatUntil' | 'handle' | 'fullCure';
  readonly word: string;
  /** null: not in the time that is known. */
  readonly moment: string | null;
  readonly isReached: boolean;
  /** Place on the bar, 0 at the coat, 1 at its end. */
  readonly at: number;
}

/** Work that cannot begin while something waits. */
export interface HeldWork {
  readonly kind: 'task' | 'outsideJob';
  readonly id: string;
  readonly name: string;
  /** When the accepted plan begins it; null: it has no place. */
  readonly planned: string | null;
}

export interface CuringCoat {
  readonly key: string;
  readonly taskId: string;
  readonly title: string;
  readonly material: string;
  readonly materialId: string;
  readonly laid: string;
  /** When a hand may touch it. */
  readonly touchable: string;
  readonly isTouchable: boolean;
  readonly stages: readonly StageMark[];
  /** Where now is on the bar. */
  readonly now: number;
  /** Share of the bar in which the recoat window is open. */
  readonly window: { readonly from: number; readonly to: number } | null;
  readonly holds: readonly HeldWork[];
  /** Work that a missed window asks for, to be made tasks of the series; `isPlanned`: the accepted plan has it of its own accord. */
  readonly late: { readonly coatTaskId: string; readonly nextTaskId: string; readonly word: string; readonly isPlanned: boolean } | null;
  /** Cold, damp, spoilt, or a window that closes. */
  readonly alarms: readonly Issue[];
}

export interface AwayJob {
  readonly id: string;
  readonly revision: number;
  readonly name: string;
  readonly trade: string;
  readonly parts: string;
  /** `since Mon 23 Nov`, or `not dropped off yet`. */
  readonly since: string;
  readonly isAway: boolean;
  readonly promisedFor: string | null;
  /** `back Thu 10 Dec with 50 %, Tue 15 Dec with 80 %`. */
  readonly chances: readonly { readonly percent: number; readonly day: string }[];
  /** About the day it is needed. */
  readonly needed: string | null;
  /** The last day to drop it off for the wanted confidence, or why there is none. */
  readonly dropOff: string | null;
  readonly learned: string;
  readonly holds: readonly HeldWork[];
  readonly alarms: readonly Issue[];
}

export interface GoView {
  readonly taskId: string;
  readonly title: string;
  readonly material: string;
  readonly at: string;
  readonly isGo: boolean;
  readonly checks: readonly { readonly message: string; readonly isMet: boolean; readonly isStop: boolean }[];
  /** The earliest go in a session of its place; null: none is known. */
  readonly earliest: string | null;
  readonly potLife: string | null;
  readonly cautions: readonly string[];
}

export interface HeatingPoint {
  readonly name: string;
  readonly hours: number;
  readonly kwh: number;
  readonly cost: string;
  readonly ready: string;
  /** Hours from now until ready; null: not in the time that is known. */
  readonly readyIn: number | null;
  readonly isOnCurve: boolean;
  readonly isCheapest: boolean;
}

export interface HeatingView {
  /** What is warmed: one coat, or all that wait in an air. */
  readonly choices: readonly Choice[];
  readonly chosen: string;
  readonly airZone: string;
  readonly by: string;
  readonly byChoices: readonly Choice[];
  readonly points: readonly HeatingPoint[];
  readonly verdict: string;
  /** The run that the cheapest plan asks for, ready to be added. */
  readonly run: { readonly name: string; readonly airZone: string; readonly start: number; readonly end: number; readonly setPoint: number } | null;
  /** A burner or glowing heater in solvent vapour. */
  readonly hazards: readonly Issue[];
  /** Hazards beyond those listed. */
  readonly moreHazards: number;
  readonly cautions: readonly string[];
}

export interface WaitsView {
  readonly seriesId: string;
  readonly clock: string;
  readonly isHourly: boolean;
  readonly temperature: string;
  readonly curing: readonly CuringCoat[];
  readonly away: readonly AwayJob[];
  /** Jobs that are still to be dropped off. */
  readonly ahead: readonly AwayJob[];
  readonly go: GoView | null;
  readonly heating: HeatingView | null;
  readonly confidence: number;
}

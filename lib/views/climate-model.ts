/** The climate page as plain data. Temperatures °C, humidity percent. */
import type { Issue } from '@/lib/result';
import type { Choice } from './record-form-model';

/** A curve over hours; equally long, hour 0 at the left. */
export interface ClimateCurve {
  readonly hours: number;
  readonly air: readonly number[];
  readonly surface: readonly number[];
  readonly outside: readonly number[];
  readonly dewPoint: readonly number[];
  /** Kelvins between surface and dew point. */
  readonly margin: readonly number[];
  /** True where a logger measured. */
  readonly isMeasured: readonly boolean[];
  /** Midnights with the day they begin. */
  readonly days: readonly { readonly hour: number; readonly label: string }[];
  readonly sessions: readonly { readonly from: number; readonly to: number; readonly label: string; readonly isHeated: boolean }[];
  readonly heating: readonly { readonly from: number; readonly to: number; readonly label: string }[];
  /** The coldest that a wet coat bears, while it is wet. */
  readonly floors: readonly { readonly from: number; readonly to: number; readonly at: number; readonly label: string }[];
  /** Hour of now, null outside. */
  readonly now: number | null;
}

export interface ClimateDay {
  readonly date: string;
  readonly label: string;
  readonly air: string;
  readonly surface: string;
  readonly margin: string;
  readonly isDamp: boolean;
  readonly humidity: string;
  readonly heat: string;
  readonly measured: string;
}

export interface ClimateHour {
  readonly label: string;
  readonly air: string;
  readonly surface: string;
  readonly dewPoint: string;
  readonly margin: string;
  readonly humidity: string;
  readonly isMeasured: boolean;
}

export interface FitView {
  readonly timeConstant: number;
  readonly offset: number;
  /** In words: `12.4 h, 2.1 K warmer than outside; the readings lie 0.4 K from it on average`. */
  readonly text: string;
  /** The room already has these values. */
  readonly isInUse: boolean;
}

export interface ClimateView {
  readonly seriesId: string;
  readonly revision: number;
  readonly zone: string;
  readonly airZone: string;
  readonly airZones: readonly Choice[];
  readonly zones: readonly Choice[];
  readonly span: string;
  /** First dates of the span before and after. */
  readonly before: string;
  readonly after: string;
  readonly from: string;
  /** null: no weather is recorded. */
  readonly curve: ClimateCurve | null;
  readonly days: readonly ClimateDay[];
  readonly hours: readonly ClimateHour[];
  /** Days without weather of their own in the span. */
  readonly filled: string | null;
  readonly readings: readonly { readonly id: string; readonly name: string; readonly facts: string }[];
  readonly fit: FitView | null;
  /** Why there is no fit. */
  readonly fitIssues: readonly Issue[];
  readonly room: string;
  /** What the air that comes in takes to warm; null without weather. */
  readonly freshAir: string | null;
  readonly cautions: readonly string[];
}

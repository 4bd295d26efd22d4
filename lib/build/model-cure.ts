/** What decides how long paint, filler and glue take: material, room, heating, weather, readings. */
import type { CivilDate } from '@/lib/calendar';
import type { Celsius, Instant, Minutes } from '@/lib/units';
import type { Row } from './model-row';

/**
 * How the rate follows the temperature. `value`: Q in kelvins for `arrhenius`, the datum in °C for `maturity`, the humidity in
 * percent at the reference for `moisture`; null for `doubling` (see `doublingPer`) and `steady`.
 */
export interface CureLaw {
  readonly kind: 'doubling' | 'arrhenius' | 'maturity' | 'moisture' | 'steady';
  readonly value: number | null;
}

/** Recoat window in hours for surfaces from one temperature to another, °C. */
export interface RecoatRange {
  readonly from: number;
  readonly to: number;
  readonly min: number;
  readonly max: number;
}

/** Where the value of a field comes from. `none`: common practice, no source. `memory`: from memory, never shown as verified. */
export interface FieldSource {
  readonly field:
    | 'stages' | 'law' | 'minimumTemperature' | 'belowMinimum' | 'maximumTemperature' | 'humidity' | 'dewMargin' | 'recoatRows'
    | 'potLife' | 'thinner' | 'lateWork' | 'bake' | 'depthPerRootDay';
  readonly kind: 'read' | 'memory' | 'none';
  readonly text: string;
}

/** A material beyond its drying times. Temperatures are of the surface, °C; null: no limit, or not known. */
export interface MaterialCure {
  /** Solvent gone enough for the next wet pass. */
  readonly flashOff: Minutes;
  readonly law: CureLaw;
  /** Coldest surface until touch dry; null: the same as to lay it. */
  readonly minimumUntilDry: Celsius | null;
  readonly belowMinimum: 'pauses' | 'never forms' | 'surface fault';
  readonly maximumTemperature: Celsius;
  /** Percent. */
  readonly humidity: { readonly low: number | null; readonly high: number | null };
  /** Kelvins above the dew point. */
  readonly dewMargin: number;
  /** From cold to warm; empty: the window of the drying times. */
  readonly recoatRows: readonly RecoatRange[];
  /** How the pot life follows warmth. `at`: the temperature it is given for. */
  readonly pot: { readonly at: Celsius; readonly halvesPer: number; readonly induction: Minutes; readonly isInductionIncluded: boolean };
  /** Percent by volume. */
  readonly thinner: { readonly low: number | null; readonly high: number | null };
  /** Owed before the next coat once the window has closed. */
  readonly lateWork: 'none' | 'abrade' | 'clean and tack coat' | 'strip';
  /** Metal temperature and minutes at it. */
  readonly bake: { readonly metalTemperature: Celsius | null; readonly hold: Minutes | null };
  /** mm cured after a day, for what cures with moisture. */
  readonly depthPerRootDay: number | null;
  /** Cures only between metal faces that shut out air. */
  readonly isConfinedOnly: boolean;
  readonly cautions: readonly string[];
  readonly sources: readonly FieldSource[];
}

export interface Workshop {
  /** The room as one lump of mass. */
  readonly room: {
    /** Hours in which a difference to outside falls to 37 %. */
    readonly timeConstant: number;
    /** W/K */
    readonly heatLoss: number;
    /** Kelvins above outside without heating. */
    readonly offset: number;
    /** m3 */
    readonly volume: number;
    /** An hour. */
    readonly airChanges: number;
    /** Water from people and wet things, kg an hour. */
    readonly moisture: number;
    /** Hours the surface of the work lags behind the air. */
    readonly surfaceLag: number;
  };
  readonly heater: {
    readonly kilowatts: number;
    readonly kind: 'electric' | 'flued burner' | 'flueless burner';
    /** For burners. */
    readonly fuel: 'propane' | 'natural gas' | 'paraffin' | null;
    /** Nothing in it glows, sparks or burns in the air of the room. */
    readonly isIgnitionSafe: boolean;
  };
  /** Of a kWh of heat, in `currency`. */
  readonly pricePerKwh: number;
  readonly currency: string;
  /** Time that dust takes to settle. */
  readonly dustSettles: Minutes;
  /** Airs that differ from the room above: a tent, an office. Left out: none. */
  readonly airs?: readonly AirRoom[] | undefined;
}

/** The room and heater of one air. */
export interface AirRoom extends Pick<Workshop, 'room' | 'heater'> {
  readonly airZone: string;
}

/** One material of a coating system. */
export interface SystemLayer {
  readonly materialId: string;
  readonly coats: number;
  /** Work of each coat. */
  readonly work: Minutes;
  /** Between its own coats: in the recoat window, or wet on wet after the flash-off, in one piece of work. */
  readonly between: 'recoat' | 'wet on wet';
  /** Abraded before it in any case. */
  readonly isAbradedBefore: boolean;
}

/** Several coats as one object, unfolded into tasks when it is laid on a part. */
export interface CoatingSystem extends Row {
  readonly kind: 'coatingSystem';
  readonly layers: readonly SystemLayer[];
  /** Work of an abrasion. */
  readonly abrading: Minutes;
}

/** Heating outside or across sessions: a night, a weekend. */
export interface HeatingRun extends Row {
  readonly kind: 'heatingRun';
  readonly airZone: string;
  readonly start: Instant;
  readonly end: Instant;
  readonly setPoint: Celsius;
}

export interface WeatherDay {
  readonly date: CivilDate;
  /** °C */
  readonly low: number;
  readonly high: number;
  /** °C; null: not known. */
  readonly dewPoint: number | null;
  /** Mean of the day, percent; null: not known. */
  readonly humidity: number | null;
}

/** Lows and highs of days. Days between them lie on a straight line; where two tables have a day, the later table counts. */
export interface Weather extends Row {
  readonly kind: 'weather';
  readonly days: readonly WeatherDay[];
}

/** One import of a logger. The rows themselves are kept beside the series. */
export interface Readings extends Row {
  readonly kind: 'readings';
  readonly airZone: string;
  readonly count: number;
  readonly from: Instant;
  readonly to: Instant;
}

export type DryingStage = 'touchDry' | 'recoatFrom' | 'handle' | 'fullCure';

/** How long coats take, as the compiler asks it: at one steady temperature, or by the clock of the workshop's climate. */
import type { DryingStage, Material, SeriesDocument } from '@/lib/build';
import { coatMoments, curingTemperature, recoatWindow, stageWait, type CoatMoments } from '@/lib/cure';
import type { Interval } from '@/lib/scheduling';
import { celsius, type Celsius, type Instant } from '@/lib/units';
import type { ClockWait } from './wait-table';

/** A wait in words. */
export interface WaitTold {
  /** Minutes from application. */
  readonly length: number;
  /** `at 12 °C`. */
  readonly conditions: string;
  /** Minutes it would take at a warmer temperature. */
  readonly warm: { readonly at: Celsius; readonly length: number };
}

/** Minutes are the engine's. */
export interface CureModel {
  /** From the end of the work until a stage. */
  readonly wait: (material: Material, stage: DryingStage) => ClockWait;
  /** When a coat laid at a minute has reached a stage; infinite when not in the time that is known. */
  readonly reached: (material: Material, stage: DryingStage, laid: number) => number;
  /** Longest wait for the next coat; null: no bound. */
  readonly longest: (material: Material) => number | null;
  /** When it must not be laid, since the cold would spoil it. */
  readonly spoilt: (material: Material) => readonly Interval[];
  readonly moments: (material: Material, laidAt: Instant) => CoatMoments;
  /** How warm it is between two moments, null where that is not known by the hour. */
  readonly warmth: (from: Instant, to: Instant) => Celsius | null;
  /** Heat put into the air between two moments, kWh; null where no climate is known. */
  readonly heat: (from: Instant, to: Instant) => number | null;
  /** About the wait that ends at a moment. */
  readonly tell: (material: Material, stage: DryingStage, until: Instant) => WaitTold;
}

/** Kelvins of heating that a change proposes. */
const WARMER = 10;

/** A temperature worth proposing: warmer than it is, and one that the material bears. */
export function warmerThan(material: Material, now: number): Celsius {
  return celsius(Math.round(Math.max(now, material.minimumTemperature) + WARMER));
}

/** While no weather is recorded: everything at the series' workshop temperature, or at the minimum somebody has to keep. */
export function steadyCure(document: SeriesDocument): CureModel {
  const { workshopTemperature } = document.series;
  const minutesTo = (material: Material, stage: DryingStage): number => stageWait(material, stage, workshopTemperature);
  return {
    wait: (material, stage) => ({ kind: 'elapsed', minutes: minutesTo(material, stage) }),
    reached: (material, stage, laid) => laid + minutesTo(material, stage),
    longest: (material) => recoatWindow(material, workshopTemperature).until,
    spoilt: () => [],
    moments: (material, laidAt) => coatMoments(material, laidAt, workshopTemperature),
    warmth: () => null,
    heat: () => null,
    tell: (material, stage) => {
      const { isHeatOwed } = curingTemperature(material, workshopTemperature);
      const warm = warmerThan(material, workshopTemperature);
      return {
        length: minutesTo(material, stage),
        conditions: isHeatOwed
          ? `counted at its minimum of ${material.minimumTemperature} °C, so somebody must keep it that warm`
          : `at ${workshopTemperature} °C`,
        warm: { at: warm, length: stageWait(material, stage, warm) },
      };
    },
  };
}

/** How long a coat takes to reach a stage at a steady temperature. */
import type { DryingStages, DryingStage, Material } from '@/lib/build';
import { addMinutes, minutes, type Celsius, type Instant, type Minutes } from '@/lib/units';

/**
 * Rate of curing against the rate at the reference temperature: 2^((T - reference) / doublingPer).
 * A rule of thumb for room temperatures, not for ovens; common practice, no source.
 * @example cureRate(10, 20, 10) // 0.5
 */
function cureRate(at: number, reference: number, doublingPer: number): number {
  return 2 ** ((at - reference) / doublingPer);
}

/**
 * The temperature a wait is computed at. Below its minimum a film may never form, so the wait assumes
 * that the coat is kept at the minimum; `isHeatOwed` says that somebody has to see to it.
 */
export function curingTemperature(material: Material, workshop: Celsius): { readonly at: Celsius; readonly isHeatOwed: boolean } {
  const isHeatOwed = workshop < material.minimumTemperature;
  return { at: isHeatOwed ? material.minimumTemperature : workshop, isHeatOwed };
}

/** Minutes from application to the stage at the workshop's temperature, rounded up. */
export function stageWait(material: Material, stage: DryingStage, workshop: Celsius): Minutes {
  const { at } = curingTemperature(material, workshop);
  const rate = cureRate(at, material.referenceTemperature, material.doublingPer);
  return minutes(Math.ceil(material.stages[stage] / rate - 1e-9));
}

/** A recoat window in minutes after application. `until` null: it does not close. */
export interface RecoatWindow {
  readonly from: Minutes;
  readonly until: Minutes | null;
}

/**
 * The opening scales with a slow cure; the closing is never stretched, and shortens in warmth
 * (UFGS 09 97 1x p. 28 takes the hottest held row). In a cold shop the window may therefore be empty.
 */
export function recoatWindow(material: Material, workshop: Celsius): RecoatWindow {
  const { at } = curingTemperature(material, workshop);
  const stages: DryingStages = material.stages;
  const rate = cureRate(at, material.referenceTemperature, material.doublingPer);
  const until = stages.recoatUntil === null ? null : minutes(Math.floor(stages.recoatUntil / Math.max(1, rate) + 1e-9));
  return { from: stageWait(material, 'recoatFrom', workshop), until };
}

/** Moments at which a coat laid at `laidAt` reaches each stage. */
export interface CoatMoments {
  readonly touchDry: Instant;
  readonly recoatFrom: Instant;
  readonly recoatUntil: Instant | null;
  readonly handle: Instant;
  readonly fullCure: Instant;
}

/** @example coatMoments(primer, laidAt, celsius(20)).touchDry // laidAt plus the primer's touch-dry time */
export function coatMoments(material: Material, laidAt: Instant, workshop: Celsius): CoatMoments {
  const at = (stage: DryingStage) => addMinutes(laidAt, stageWait(material, stage, workshop));
  const window = recoatWindow(material, workshop);
  return {
    touchDry: at('touchDry'),
    recoatFrom: at('recoatFrom'),
    recoatUntil: window.until === null ? null : addMinutes(laidAt, window.until),
    handle: at('handle'),
    fullCure: at('fullCure'),
  };
}

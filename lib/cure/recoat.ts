/** The recoat window: its opening follows the cure, its closing follows the clock and shortens in the warmth. */
import type { CoatMaterial, RecoatRow } from './coat-material';
import { rateAt } from './rate';

/**
 * The row of a recoat table for the hottest surface held at least an hour. A temperature between two rows counts as the warmer
 * one, below the first as the first; null above the last: then there is no window at all.
 * @example recoatRow(rows, 30) // the row of 28 to 32 °C
 */
export function recoatRow(rows: readonly RecoatRow[], hottest: number): RecoatRow | null {
  return rows.find((row) => hottest <= row.to) ?? null;
}

/**
 * Longest wait in minutes after application for the next coat, null: no bound. Never stretched by a slow cure.
 * From the table where there is one, else the data sheet's time, divided by the rate in warmth.
 */
export function longestRecoatWait(material: CoatMaterial, hottest: number): number | null {
  if (material.recoatRows.length > 0) return (recoatRow(material.recoatRows, hottest)?.max ?? 0) * 60;
  const { recoatUntil } = material.stages;
  if (recoatUntil === null) return null;
  if (material.law.kind === 'moisture') return recoatUntil;
  return recoatUntil / Math.max(1, rateAt(material.law, material.referenceTemperature, hottest, hottest, 50));
}

/** Shortest wait in minutes by the table alone, 0 without one. */
export function tableRecoatWait(material: CoatMaterial, hottest: number): number {
  return material.recoatRows.length > 0 ? (recoatRow(material.recoatRows, hottest)?.min ?? 0) * 60 : 0;
}

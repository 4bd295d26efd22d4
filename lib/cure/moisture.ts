/**
 * Sealants that cure with water from the air: from the face inwards, the deeper the slower.
 * Depth grows with the square root of time (Comyn 1998, the law from memory): depth^2 = 2 V P p t, p the vapour pressure.
 */
import type { Instant } from '@/lib/units';
import { equivalentMinutes, type CureClock } from './clock';

/** Depth in mm after some days at the reference. @example cureDepth(3, 4) // 6 */
export function cureDepth(depthPerRootDay: number, days: number): number {
  return depthPerRootDay * Math.sqrt(Math.max(0, days));
}

/**
 * Minutes at the reference until a bead is cured to a depth; from one open face. Feed them to a clock with a `moisture` law.
 * @example minutesToDepth(3, 6) // 4 days
 */
export function minutesToDepth(depthPerRootDay: number, depth: number): number {
  return (depth / depthPerRootDay) ** 2 * 1440;
}

/** Depth in mm cured between two moments, by a clock with a `moisture` law. */
export function depthAt(clock: CureClock, depthPerRootDay: number, laidAt: Instant, at: Instant): number {
  return cureDepth(depthPerRootDay, equivalentMinutes(clock, laidAt, at) / 1440);
}

/** Tightening: what is on the thread decides how much of a torque becomes preload. */

/** Nut factors, from a fastener torque note. */
export const NUT_FACTOR = { dry: 0.2, lubricated: 0.15 } as const;

/**
 * T = K D F, in any units that fit together: lb ft from feet and lbf, N m from m and N.
 * @example tighteningTorque(0.2, 0.375 / 12, 4940) // 30.9 lb ft
 */
export function tighteningTorque(nutFactor: number, diameter: number, preload: number): number {
  return nutFactor * diameter * preload;
}

/** How much more preload the same torque gives on another thread. @example preloadRatio(0.2, 0.15) // 1.33 */
export function preloadRatio(stated: number, actual: number): number {
  return stated / actual;
}

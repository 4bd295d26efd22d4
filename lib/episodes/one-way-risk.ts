/** The risk of losing a shot that happens once. */

/** Chance that one camera loses a shot (not rolling, out of focus, card or battery): one in twenty. Common practice, no source. */
const USUAL_LOSS = 0.05;
/** Share of losses that hit every camera at once: light, or the moment missed by all. Common practice, no source. */
const USUAL_SHARED = 0.1;

export interface OneWayRisk {
  /** Chance that one shot is lost. */
  readonly shot: number;
  /** Chance that at least one of all the shots is lost. */
  readonly any: number;
}

const isShare = (value: number): boolean => value >= 0 && value <= 1;

/**
 * Chance of losing shots that cannot be taken again, with so many cameras on each. Losses split into a shared part that hits
 * all cameras and a part of each camera alone: shared·q + ((1 - shared)·q)ⁿ, and q for one camera. The shared part as in the
 * beta-factor model of common causes (Fleming 1975, from memory).
 * @throws RangeError for chances outside 0 to 1, or no camera.
 * @example oneWayRisk(1, 2).shot // 0.007
 */
export function oneWayRisk(shots: number, cameras: number, loss: number = USUAL_LOSS, shared: number = USUAL_SHARED): OneWayRisk {
  if (!isShare(loss) || !isShare(shared) || !Number.isInteger(cameras) || cameras < 1 || !(shots >= 0)) {
    throw new RangeError(`No risk of ${shots} shots with ${cameras} cameras, chances ${loss} and ${shared}`);
  }
  const shot = cameras === 1 ? loss : shared * loss + ((1 - shared) * loss) ** cameras;
  return { shot, any: 1 - (1 - shot) ** shots };
}

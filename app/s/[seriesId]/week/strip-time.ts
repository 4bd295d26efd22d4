/** Moments and places on the strip: the stretches of a week that are drawn to scale. Pure. */

/** A stretch of time drawn to scale; `left` and `width` are shares of the strip. */
export interface ScaledSpan {
  readonly start: number;
  readonly end: number;
  readonly left: number;
  readonly width: number;
}

/** Steps of a hand, minutes. */
export const HAND_STEP = 15;
const STEP_MS = HAND_STEP * 60_000;

/** The moment at a share of the strip, on the quarter of an hour since its stretch began; between stretches the nearer edge. */
export function momentAt(spans: readonly ScaledSpan[], share: number): number | null {
  const distance = (span: ScaledSpan) => Math.max(span.left - share, share - span.left - span.width, 0);
  const [nearest] = spans.toSorted((a, b) => distance(a) - distance(b));
  if (nearest === undefined) return null;
  const part = Math.min(1, Math.max(0, (share - nearest.left) / nearest.width));
  const steps = Math.round((part * (nearest.end - nearest.start)) / STEP_MS);
  return Math.min(nearest.start + steps * STEP_MS, nearest.end - STEP_MS);
}

/** A step earlier or later; past the edge of a stretch on to the next one, of the week's stretches only. */
export function stepFrom(spans: readonly ScaledSpan[], at: number, direction: -1 | 1): number {
  const next = at + direction * STEP_MS;
  if (spans.some((span) => span.start <= next && next < span.end)) return next;
  const sorted = spans.toSorted((a, b) => a.start - b.start);
  if (direction > 0) return sorted.find((span) => span.start > at)?.start ?? next;
  const before = sorted.findLast((span) => span.end <= at);
  return before === undefined ? next : before.end - STEP_MS;
}

/** Waits read both ways: when something that ends is ready, and the last end that is ready by then. */
import type { LagLength } from '@/lib/scheduling';

/** A wait on the clock, or by a table. */
export type ClockWait = Exclude<LagLength, { readonly kind: 'working' }>;

/** When it is ready after an end. @example readyAfter({ kind: 'elapsed', minutes: 60 }, 100) // 160 */
export function readyAfter(wait: ClockWait, end: number): number {
  if (wait.kind === 'elapsed') return end + wait.minutes;
  return wait.ready[Math.max(0, Math.ceil(end / wait.step))] ?? Infinity;
}

/** The last end that is ready by a minute. @example lastEnd({ kind: 'elapsed', minutes: 60 }, 160) // 100 */
export function lastEnd(wait: ClockWait, readyBy: number): number {
  if (wait.kind === 'elapsed') return readyBy - wait.minutes;
  const { ready, step } = wait;
  let [low, high] = [0, ready.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (ready[middle]! <= readyBy) low = middle + 1;
    else high = middle;
  }
  return (low - 1) * step;
}

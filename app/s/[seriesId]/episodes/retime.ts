/** What moved segments do to an episode, before the server has answered. */
import type { RuntimeView } from '@/lib/views';

const rounded = (value: number): number => Math.round(value * 10) / 10;

/** The runtime of other segments against the same wish. */
export function retime(runtime: RuntimeView, rows: readonly { readonly length: number }[], titles: number): RuntimeView {
  const minutes = rows.length === 0 ? 0 : rounded(rows.reduce((sum, row) => sum + row.length, titles));
  if (minutes === runtime.minutes) return runtime;
  return { ...runtime, minutes, isInside: minutes >= runtime.min && minutes <= runtime.max, text: `${minutes} min of ${runtime.target} wished for (${runtime.min} to ${runtime.max})` };
}

/** Recorded only after the recording of its episode is due. */
export function isLate({ readyAt }: { readonly readyAt: number | null }, due: number): boolean {
  return readyAt !== null && readyAt > due;
}

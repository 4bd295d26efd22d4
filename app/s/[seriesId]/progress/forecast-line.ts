/** What the run route tells the page, one line of JSON each. */
import { readLines } from '@/app/_lines/read';
import type { Issue } from '@/lib/result';

export type ForecastLine =
  | { readonly kind: 'progress'; readonly share: number }
  | { readonly kind: 'forecast'; readonly number: number }
  | { readonly kind: 'issues'; readonly issues: readonly Issue[] };

/** Throws like {@link readLines}. */
export function runForecast(seriesId: string, signal: AbortSignal, onLine: (line: ForecastLine) => void): Promise<void> {
  return readLines(`/s/${encodeURIComponent(seriesId)}/progress/run`, 'forecast', signal, onLine);
}

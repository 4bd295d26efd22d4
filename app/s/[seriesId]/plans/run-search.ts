/** Reads the run route's lines as they come. */
import { readLines } from '@/app/_lines/read';
import type { RunLine } from './progress';

/** Throws like {@link readLines}. */
export function runSearch(seriesId: string, seconds: number, signal: AbortSignal, onLine: (line: RunLine) => void): Promise<void> {
  return readLines(`/s/${encodeURIComponent(seriesId)}/plans/run?seconds=${seconds}`, 'search', signal, onLine);
}

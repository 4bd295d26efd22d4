/** What the run route tells the page, one line of JSON each. */
import type { Issue } from '@/lib/result';

export type RunLine =
  | { readonly kind: 'progress'; readonly share: number; readonly schedulesTried: number; readonly lateMinutes: number | null; readonly unplaced: number | null; readonly finish: number | null; readonly earliestFinish: number }
  | { readonly kind: 'plan'; readonly planNumber: number }
  | { readonly kind: 'issues'; readonly issues: readonly Issue[] };

/** How long a search may take, in seconds. */
export const SEARCH_SECONDS = [5, 20, 60] as const;

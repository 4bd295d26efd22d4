import type { Issue } from '@/lib/result';

/** A change that was saved, as the notice tells it. */
export interface SavedNote {
  readonly number: number;
  /** `Changed task Strip forks: hands-on time`. */
  readonly label: string;
  /** What the change made questionable, in sentences. */
  readonly warnings: readonly string[];
}

/** What a server action answers. Plain data; a refusal keeps every issue with its path. */
export type Outcome = { readonly ok: true; readonly saved: SavedNote } | { readonly ok: false; readonly issues: readonly Issue[] };

import type { Issue } from '@/lib/result';

/** What the place route tells the page. Plain data. */
export type PlaceReply =
  | { readonly ok: true; readonly reliefs: readonly string[]; readonly tried: number; readonly problem: string | null }
  | { readonly ok: false; readonly issues: readonly Issue[] };

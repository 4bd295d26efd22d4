import type { Issue } from '@/lib/result';
import type { ExplainedView } from '@/lib/views';

/** What the why route tells the page. Plain data. */
export type WhyReply = { readonly ok: true; readonly answer: ExplainedView } | { readonly ok: false; readonly issues: readonly Issue[] };

/** What the try route tells the page: one block at another time, before anything is saved. Plain data. */
import type { Issue } from '@/lib/result';
import type { TrialView } from '@/lib/views';

export type TryReply = { readonly ok: true; readonly answer: TrialView } | { readonly ok: false; readonly issues: readonly Issue[] };

/** Where a block is wished: a moment in milliseconds, or a session. */
export type Wish = { readonly at: number } | { readonly session: string };

/** @throws Error when the server cannot be reached or answers with a failure; AbortError when `signal` fires. */
export async function askTry(seriesId: string, blockId: string, wish: Wish, signal: AbortSignal): Promise<TryReply> {
  const query = new URLSearchParams({ block: blockId, ...('at' in wish ? { at: String(wish.at) } : { session: wish.session }) });
  const response = await fetch(`/s/${encodeURIComponent(seriesId)}/week/try?${query.toString()}`, { signal });
  if (!response.ok) throw new Error(`The server answered ${response.status}.`);
  const reply: TryReply = await response.json();
  return reply;
}

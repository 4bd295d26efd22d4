import { issue, type Issue } from '@/lib/result';

/** Asks a route of the week for its reply; no answer is an issue like any other. */
export async function askServer<Reply extends { readonly ok: boolean }>(path: string): Promise<Reply | { readonly ok: false; readonly issues: readonly Issue[] }> {
  try {
    const response = await fetch(path);
    if (!response.ok) throw new Error(`The server answered ${response.status}.`);
    const reply: Reply = await response.json();
    return reply;
  } catch (error) {
    return { ok: false, issues: [issue('no-answer', error instanceof Error ? error.message : 'There was no answer.', 'Check that Benchtake is still running, then try again.')] };
  }
}

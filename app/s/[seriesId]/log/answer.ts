import type { Issue } from '@/lib/result';

/** What the log answers a device, as JSON. A refusal is final: the same entry would be refused again. */
export type LogAnswer = { readonly ok: true; readonly warnings: readonly Issue[] } | { readonly ok: false; readonly issues: readonly Issue[] };

/** Refusals that pass by themselves: the device tries again. */
const PASSING: readonly string[] = ['database-busy'];

export function answer(result: LogAnswer): Response {
  if (result.ok) return Response.json(result, { headers: { 'cache-control': 'no-store' } });
  const passes = result.issues.some(({ code }) => PASSING.includes(code));
  return Response.json(result, { status: passes ? 503 : 422, headers: { 'cache-control': 'no-store' } });
}

export function isFromElsewhere(request: Request): boolean {
  return request.headers.get('sec-fetch-site') === 'cross-site';
}

import { openContext, tryMove } from '@/lib/commands';
import { loadDocument, tellTrial } from '@/lib/views';
import { instant } from '@/lib/units';
import type { TryReply } from '../try-answer';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

/** What it would mean to have a block at `at` (milliseconds), or in `session`. Reads only. */
export async function GET(request: Request, { params }: Props): Promise<Response> {
  const { seriesId } = await params;
  const asked = new URL(request.url).searchParams;
  const [at, block, session] = [Number(asked.get('at')), asked.get('block') ?? '', asked.get('session')];
  if (session === null && !(at > 0)) return new Response('Say a session or a moment.', { status: 400 });
  const tried = await tryMove(await openContext(), seriesId, block, session === null ? { at: instant(at) } : { sessionId: session });
  const document = await loadDocument(seriesId);
  const reply: TryReply = tried.ok ? { ok: true, answer: tellTrial(tried.value, document?.series.zone ?? 'UTC') } : { ok: false, issues: tried.error };
  return Response.json(reply, { headers: { 'cache-control': 'no-store' } });
}

import { explainBlock, openContext } from '@/lib/commands';
import { loadDocument, tellExplained } from '@/lib/views';
import type { WhyReply } from '../why-answer';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

/** The chain behind a block and what would free it. Reads only. */
export async function GET(request: Request, { params }: Props): Promise<Response> {
  const { seriesId } = await params;
  const block = new URL(request.url).searchParams.get('block') ?? '';
  const explained = await explainBlock(await openContext(), seriesId, block);
  const document = await loadDocument(seriesId);
  const reply: WhyReply = explained.ok ? { ok: true, answer: tellExplained(explained.value, document?.series.zone ?? 'UTC') } : { ok: false, issues: explained.error };
  return Response.json(reply, { headers: { 'cache-control': 'no-store' } });
}

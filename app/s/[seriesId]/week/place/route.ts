import { explainUnplaced, openContext } from '@/lib/commands';
import type { PlaceReply } from '../place-answer';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

/** The least changes that would give a place to work that a plan leaves out. Reads only. */
export async function GET(request: Request, { params }: Props): Promise<Response> {
  const { seriesId } = await params;
  const { searchParams } = new URL(request.url);
  const kind = searchParams.get('kind') === 'outsideJob' ? 'outsideJob' : 'task';
  const which = searchParams.get('plan') === 'draft' ? 'draft' : 'accepted';
  const found = await explainUnplaced(await openContext(), seriesId, which, { kind, id: searchParams.get('id') ?? '' });
  const reply: PlaceReply = found.ok
    ? { ok: true, reliefs: found.value.reliefs.map(({ text }) => text), tried: found.value.tried, problem: found.value.problem }
    : { ok: false, issues: found.error };
  return Response.json(reply, { headers: { 'cache-control': 'no-store' } });
}

import { loadDocument, viewCaptions } from '@/lib/views';

interface Context {
  readonly params: Promise<{ seriesId: string; episodeId: string }>;
}

/** The cautions of an episode as a WebVTT file. */
export async function GET(_request: Request, { params }: Context): Promise<Response> {
  const { seriesId, episodeId } = await params;
  const document = await loadDocument(seriesId);
  if (document === null || !document.episodes.some(({ id }) => id === episodeId)) return new Response('There is no such episode.', { status: 404 });
  const file = viewCaptions(document, episodeId);
  if (!file.ok) return new Response(file.error.map(({ message, fix }) => `${message} ${fix}`).join('\n'), { status: 422 });
  return new Response(file.value.text, { headers: { 'content-type': 'text/vtt; charset=utf-8', 'content-disposition': 'attachment; filename="cautions.vtt"' } });
}

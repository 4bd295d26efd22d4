import { EXPORTS, exportLog, loadDocument, openViewContext } from '@/lib/views';

interface Props {
  readonly params: Promise<{ seriesId: string; format: string }>;
}

/** The log as a file to keep. */
export async function GET(_request: Request, { params }: Props): Promise<Response> {
  const { seriesId, format: asked } = await params;
  const format = EXPORTS.find((known) => known === asked);
  const document = await loadDocument(seriesId);
  if (format === undefined || document === null) return new Response('There is no such file.', { status: 404 });
  const file = await exportLog(await openViewContext(), document, format);
  if (!file.ok) return new Response(file.error.map(({ message, fix }) => `${message} ${fix}`).join('\n'), { status: 409 });
  return new Response(file.value.text, { headers: { 'content-type': file.value.type, 'content-disposition': `attachment; filename="${file.value.name}"`, 'cache-control': 'no-store' } });
}

import { revalidatePath } from 'next/cache';
import { keepPhoto, openContext } from '@/lib/commands';
import { issue } from '@/lib/result';
import { openViewContext, viewPhoto } from '@/lib/views';
import { answer, isFromElsewhere } from '../../answer';

interface Props {
  readonly params: Promise<{ seriesId: string; photoId: string }>;
}

/** Larger ones are not read at all; what is smaller is judged by the log itself. */
const LONGEST = 64_000_000;

/** A kept photo, small with `?size=small`. It never changes. */
export async function GET(request: Request, { params }: Props): Promise<Response> {
  const { seriesId, photoId } = await params;
  const bytes = await viewPhoto(await openViewContext(), seriesId, photoId, new URL(request.url).searchParams.get('size') === 'small');
  if (bytes === null) return new Response('There is no such photo.', { status: 404 });
  return new Response(new Uint8Array(bytes), { headers: { 'content-type': 'image/jpeg', 'cache-control': 'private, max-age=31536000, immutable', 'x-content-type-options': 'nosniff' } });
}

/** Takes a photo of the entry named in `?entry=`, exactly once. */
export async function POST(request: Request, { params }: Props): Promise<Response> {
  if (isFromElsewhere(request)) return new Response('Another site may not write the log.', { status: 403 });
  const { seriesId, photoId } = await params;
  const length = Number(request.headers.get('content-length') ?? 0);
  if (length > LONGEST) {
    return answer({ ok: false, issues: [issue('photo-too-heavy', `The photo has ${Math.round(length / 1_000_000)} MB; that is more than the log reads.`, 'Send it smaller: the phone can share it at a lower size.')] });
  }
  const kept = await keepPhoto(await openContext(), seriesId, new URL(request.url).searchParams.get('entry') ?? '', photoId, new Uint8Array(await request.arrayBuffer()));
  if (kept.ok) revalidatePath(`/s/${seriesId}/log`, 'layout');
  return answer(kept.ok ? { ok: true, warnings: [] } : { ok: false, issues: kept.error });
}

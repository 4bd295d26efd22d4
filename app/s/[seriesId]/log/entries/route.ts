import { revalidatePath } from 'next/cache';
import { logEntry, openContext } from '@/lib/commands';
import { issue } from '@/lib/result';
import { answer, isFromElsewhere } from '../answer';

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

const LONGEST = 200_000;

/** Takes one entry of the log from a device, exactly once. */
export async function POST(request: Request, { params }: Props): Promise<Response> {
  if (isFromElsewhere(request)) return new Response('Another site may not write the log.', { status: 403 });
  const { seriesId } = await params;
  const text = await request.text();
  let input: unknown = null;
  if (text.length <= LONGEST) {
    try {
      input = JSON.parse(text);
    } catch {
      return answer({ ok: false, issues: [issue('log-entry-value', 'The entry cannot be read.', 'Load the page again and log it once more.')] });
    }
  }
  const logged = await logEntry(await openContext(), seriesId, input);
  if (logged.ok && logged.value.isNew) revalidatePath(`/s/${seriesId}/log`, 'layout');
  return answer(logged.ok ? { ok: true, warnings: logged.value.warnings } : { ok: false, issues: logged.error });
}

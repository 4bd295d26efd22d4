import { openContext, requestPlan } from '@/lib/commands';
import { issue } from '@/lib/result';
import { SEARCH_SECONDS, type RunLine } from '../progress';

/** The same seed each time: the same build gives the same plan. */
const SEED = 1;

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

function readSeconds(request: Request): number {
  const asked = Number(new URL(request.url).searchParams.get('seconds'));
  return SEARCH_SECONDS.find((seconds) => seconds === asked) ?? SEARCH_SECONDS[0];
}

/** A fault of the program is told too: the search must not just stop in silence. */
function tellFault(error: unknown): RunLine {
  console.error(error);
  const message = error instanceof Error ? error.message : 'The search stopped for a reason it did not tell.';
  return { kind: 'issues', issues: [issue('planner-fault', message, 'Try again. If it happens again, report it with the numbers above.')] };
}

/**
 * Plans a series and tells how far it is: NDJSON, one {@link RunLine} a line, the last one a plan or issues.
 * Closing the request stops the worker and saves nothing.
 */
export async function POST(request: Request, { params }: Props): Promise<Response> {
  if (request.headers.get('sec-fetch-site') === 'cross-site') return new Response('Another site may not start a search.', { status: 403 });
  const { seriesId } = await params;
  const stopped = new AbortController();
  request.signal.addEventListener('abort', () => stopped.abort());
  const body = new ReadableStream<Uint8Array>({
    async start(stream) {
      const encoder = new TextEncoder();
      const tell = (line: RunLine) => {
        if (!stopped.signal.aborted) stream.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
      };
      try {
        const result = await requestPlan(await openContext(), seriesId, {
          milliseconds: readSeconds(request) * 1000,
          seed: SEED,
          signal: stopped.signal,
          onProgress: (progress) => tell({ kind: 'progress', ...progress }),
        });
        tell(result.ok ? { kind: 'plan', planNumber: result.value.plan.number } : { kind: 'issues', issues: result.error });
      } catch (error) {
        if (!stopped.signal.aborted) tell(tellFault(error));
      }
      if (!stopped.signal.aborted) stream.close();
    },
    cancel: () => stopped.abort(),
  });
  return new Response(body, { headers: { 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store, no-transform' } });
}

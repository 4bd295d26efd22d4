import { openContext, requestForecast } from '@/lib/commands';
import { issue } from '@/lib/result';
import type { ForecastLine } from '../forecast-line';

const RUNS = 10_000;
/** The same luck each time: two forecasts differ by their plans, not by chance. */
const SEED = 1;

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

/** A fault of the program is told too: the forecast must not just stop in silence. */
function tellFault(error: unknown): ForecastLine {
  console.error(error);
  const message = error instanceof Error ? error.message : 'The forecast stopped for a reason it did not tell.';
  return { kind: 'issues', issues: [issue('forecast-fault', message, 'Try again. If it happens again, report it.')] };
}

/** Forecasts a series and tells how far it is: NDJSON, one {@link ForecastLine} a line. Closing the request stops it and saves nothing. */
export async function POST(request: Request, { params }: Props): Promise<Response> {
  if (request.headers.get('sec-fetch-site') === 'cross-site') return new Response('Another site may not start a forecast.', { status: 403 });
  const { seriesId } = await params;
  const stopped = new AbortController();
  request.signal.addEventListener('abort', () => stopped.abort());
  const body = new ReadableStream<Uint8Array>({
    async start(stream) {
      const encoder = new TextEncoder();
      const tell = (line: ForecastLine) => {
        if (!stopped.signal.aborted) stream.enqueue(encoder.encode(`${JSON.stringify(line)}\n`));
      };
      try {
        const result = await requestForecast(await openContext(), seriesId, {
          runs: RUNS, seed: SEED, signal: stopped.signal, onProgress: (share) => tell({ kind: 'progress', share }),
        });
        tell(result.ok ? { kind: 'forecast', number: result.value.forecast.number } : { kind: 'issues', issues: result.error });
      } catch (error) {
        if (!stopped.signal.aborted) tell(tellFault(error));
      }
      if (!stopped.signal.aborted) stream.close();
    },
    cancel: () => stopped.abort(),
  });
  return new Response(body, { headers: { 'content-type': 'application/x-ndjson; charset=utf-8', 'cache-control': 'no-store, no-transform' } });
}

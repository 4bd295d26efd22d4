import { answerLines } from '@/app/_lines/answer';
import { openContext, requestForecast } from '@/lib/commands';
import type { ForecastLine } from '../forecast-line';

const RUNS = 10_000;
/** The same luck each time: two forecasts differ by their plans, not by chance. */
const SEED = 1;

interface Props {
  readonly params: Promise<{ seriesId: string }>;
}

/** Forecasts a series and tells how far it is, one {@link ForecastLine} a line. Closing the request stops it and saves nothing. */
export async function POST(request: Request, { params }: Props): Promise<Response> {
  const { seriesId } = await params;
  return answerLines<ForecastLine>(request, {
    name: 'forecast',
    fault: { code: 'forecast-fault', fix: 'Try again. If it happens again, report it.' },
    run: async (signal, tell) => {
      const result = await requestForecast(await openContext(), seriesId, { runs: RUNS, seed: SEED, signal, onProgress: (share) => tell({ kind: 'progress', share }) });
      return result.ok ? { kind: 'forecast', number: result.value.forecast.number } : { kind: 'issues', issues: result.error };
    },
  });
}

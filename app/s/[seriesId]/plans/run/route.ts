import { answerLines } from '@/app/_lines/answer';
import { openContext, requestPlan } from '@/lib/commands';
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

/** Plans a series and tells how far it is, one {@link RunLine} a line. Closing the request stops the worker and saves nothing. */
export async function POST(request: Request, { params }: Props): Promise<Response> {
  const { seriesId } = await params;
  return answerLines<RunLine>(request, {
    name: 'search',
    fault: { code: 'planner-fault', fix: 'Try again. If it happens again, report it with the numbers above.' },
    run: async (signal, tell) => {
      const result = await requestPlan(await openContext(), seriesId, {
        milliseconds: readSeconds(request) * 1000, seed: SEED, signal, onProgress: (progress) => tell({ kind: 'progress', ...progress }),
      });
      return result.ok ? { kind: 'plan', planNumber: result.value.plan.number } : { kind: 'issues', issues: result.error };
    },
  });
}

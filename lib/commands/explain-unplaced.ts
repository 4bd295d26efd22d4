import { explainUnplaced as explain, scheduleOf, type PlaceAnswer, type UnplacedWork } from '@/lib/plan';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { CommandContext } from './context';
import { loadStanding, type WhichPlan } from './standing-plan';

/**
 * The least changes that would give a place to work that a plan leaves out. Reads only. Fails as {@link loadStanding} does, and with
 * `work-has-place` where the plan does not leave it out.
 */
export async function explainUnplaced(ctx: CommandContext, seriesId: string, which: WhichPlan, subject: UnplacedWork['subject']): Promise<Result<PlaceAnswer>> {
  const found = await loadStanding(ctx, seriesId, which);
  if (!found.ok) return found;
  const { compiled, plan } = found.value;
  const own = plan.unplaced.filter((work) => work.subject.kind === subject.kind && work.subject.id === subject.id);
  if (own.length === 0) return fail([issue('work-has-place', 'This work is not left out of the plan any more.', 'Load the page again.')]);
  return ok(explain(compiled, scheduleOf(compiled, plan), { ...own[0]!, because: own.flatMap(({ because }) => because) }));
}

/** Plans a document in the test's own thread, with bounded work, so that the same test gives the same plan everywhere. */
import type { SeriesDocument } from '@/lib/build';
import { compilePlan, previousBlocks, raisePlan, type Compiled, type PlanResult, type SavedPlan } from '@/lib/plan';
import { unwrap } from '@/lib/result';
import { afterWork, check, solve, type Schedule } from '@/lib/scheduling';
import { instant, type Instant } from '@/lib/units';

export interface Planned {
  readonly compiled: Compiled;
  readonly schedule: Schedule;
  readonly plan: PlanResult;
}

export interface PlanOfOptions {
  readonly schedules?: number;
  readonly seed?: number;
  /** The plan that is followed. */
  readonly accepted?: PlanResult;
}

function accept(result: PlanResult): SavedPlan {
  return { id: 'p1', number: 1, status: 'accepted', madeAt: instant(0), acceptedAt: instant(0), basedOnChange: 1, result };
}

/** @throws Error when there is no plan, or when the independent checker finds a fault in it. */
export function planOf(document: SeriesDocument, now: Instant, options: PlanOfOptions = {}): Planned {
  const { accepted, schedules = 30, seed = 7 } = options;
  const compiled = unwrap(compilePlan({ document, now, previousBlocks: previousBlocks(accepted === undefined ? null : accept(accepted)) }));
  const solution = unwrap(solve(compiled.problem, { stop: afterWork(schedules), seed }));
  if (!('schedule' in solution)) throw new Error(`No plan: ${JSON.stringify(solution)}`);
  const violations = check(compiled.problem, solution.schedule);
  if (violations.length > 0) throw new Error(JSON.stringify(violations));
  return { compiled, schedule: solution.schedule, plan: raisePlan(compiled, solution, { solveTime: 0 }) };
}

/** A block that must be there. */
export function blockOf(plan: PlanResult, id: string) {
  const found = plan.blocks.find((block) => block.id === id);
  if (!found) throw new Error(`No block ${id}; there are: ${plan.blocks.map((block) => block.id).join(', ')}`);
  return found;
}

/** Recoat windows that sessions would allow and a plan could not keep all the same. */
import type { Fact, Schedule, Solution } from '@/lib/scheduling';
import type { Compiled } from './compile/compile';
import { readName, taskActivity } from './compile/names';

/** The next coat whose recoat window a fact is about. */
function windowOf({ draft }: Compiled, fact: Fact): string | null {
  const lag = fact.kind === 'lag-max' ? draft.lags.find(({ id }) => id === fact.lag) : undefined;
  const id = readName(lag?.to.activity ?? (fact.kind === 'latest-end' ? fact.activity : '')).id;
  const laid = draft.windows.get(id)?.laid.id;
  return laid !== undefined && (lag === undefined || lag.from.activity === taskActivity(laid)) ? id : null;
}

/** Next coats that nothing but the window can have kept out: the coat under them has a place, and they wait for nothing else. */
function leftBehind({ draft }: Compiled, { placements, unplaced }: Schedule): readonly string[] {
  const placed = new Set(placements.map(({ activity }) => activity));
  const alone = new Set(unplaced.filter(({ activity, waitsFor }) => waitsFor.length === 0 && !draft.impossible.has(activity)).map(({ activity }) => activity));
  return [...draft.windows].filter(([id, { laid }]) => alone.has(taskActivity(id)) && placed.has(taskActivity(laid.id))).map(([id]) => id);
}

/**
 * The tasks whose coat may have got no place because of a recoat window: nobody had the time, or other facts forbid it. Compiled again with
 * these as `lateFor` they get the work of a missed window. Whether that
 * helps is for the next schedule to show. Empty when no window stood in the way.
 */
export function findMissedWindows(compiled: Compiled, solution: Solution): ReadonlySet<string> {
  const { draft } = compiled;
  const schedule = 'schedule' in solution ? solution.schedule : null;
  const facts = solution.status === 'infeasible' ? solution.contradiction.facts : (schedule?.unplaced.flatMap(({ because }) => because) ?? []);
  const named = facts.map((fact) => windowOf(compiled, fact)).filter((id) => id !== null);
  const missed = [...named, ...(schedule === null ? [] : leftBehind(compiled, schedule))];
  return new Set(missed.filter((id) => draft.lateFor?.has(id) !== true));
}

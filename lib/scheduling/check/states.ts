import type { StateNeed } from '../problem';
import { listDated, type Rule, type Violation } from './violation';

/** The tail, or the table of the moments at which what was begun by then is over: whichever is later. */
function lastsTo({ tail, until }: StateNeed, end: number): number {
  const entry = until?.ready.findIndex((_, k) => k * until.step >= end) ?? -1;
  return Math.max(end + tail, entry < 0 ? end : (until?.ready[entry] ?? end));
}

/** Activities that put a medium into different states never overlap, their tails included. */
export const checkStates: Rule = (problem, schedule) => {
  const uses = listDated(problem, schedule).flatMap(({ activity, placement }) => (activity.states ?? []).map((need) => ({
    ...need, id: activity.id, start: placement.start, end: lastsTo(need, placement.end),
  })));
  return uses.flatMap((a, k) => uses.slice(k + 1).flatMap((b): readonly Violation[] => {
    if (a.medium !== b.medium || a.state === b.state) return [];
    // Something without length is nowhere.
    if (a.start === a.end || b.start === b.end || a.start >= b.end || b.start >= a.end) return [];
    return [{ rule: 'state', message: `${a.id} needs ${a.medium} ${a.state} until ${a.end} while ${b.id} makes it ${b.state} from ${b.start}.`, activities: [a.id, b.id] }];
  }));
};

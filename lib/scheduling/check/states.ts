import { listDated, type Rule, type Violation } from './violation';

/** Activities that put a medium into different states never overlap, their tails included. */
export const checkStates: Rule = (problem, schedule) => {
  const uses = listDated(problem, schedule).flatMap(({ activity, placement }) => (activity.states ?? []).map((need) => ({
    ...need, id: activity.id, start: placement.start, end: placement.end + need.tail,
  })));
  return uses.flatMap((a, k) => uses.slice(k + 1).flatMap((b): readonly Violation[] => {
    if (a.medium !== b.medium || a.state === b.state) return [];
    // Something without length is nowhere.
    if (a.start === a.end || b.start === b.end || a.start >= b.end || b.start >= a.end) return [];
    return [{ rule: 'state', message: `${a.id} needs ${a.medium} ${a.state} until ${a.end} while ${b.id} makes it ${b.state} from ${b.start}.`, activities: [a.id, b.id] }];
  }));
};

import { listDated, sharedMinutes, type Rule, type Violation } from './violation';

/** Nobody gets more of a dose than a budget allows, counted over the work whose crew they are in. */
export const checkDoses: Rule = (problem, schedule) => {
  const dosed = listDated(problem, schedule).filter(({ activity }) => (activity.doses ?? []).length > 0);
  return (problem.budgets ?? []).flatMap(({ dose, id, limit, resource, within }): readonly Violation[] => {
    if (dose === undefined) return [];
    const taken = dosed.filter(({ placement }) => placement.crew.includes(resource)).map(({ activity, placement }) => {
      const rate = (activity.doses ?? []).reduce((sum, own) => (own.kind === dose ? sum + own.perMinute : sum), 0);
      return { by: activity.id, amount: placement.pieces.reduce((sum, piece) => sum + rate * sharedMinutes(piece, within), 0) };
    }).filter(({ amount }) => amount > 0);
    const total = taken.reduce((sum, { amount }) => sum + amount, 0);
    if (total <= limit) return [];
    return [{ rule: 'dose', message: `${id}: ${resource} gets ${total} of ${dose}, ${limit} allowed.`, activities: taken.map(({ by }) => by) }];
  });
};

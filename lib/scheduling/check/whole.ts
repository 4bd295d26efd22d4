import type { Activity, Placement, Problem, Score } from '../problem';
import { listDated, type Dated, type Rule, type Violation } from './violation';

/** Each activity is placed or left out, once; nothing else is. */
export const checkCompleteness: Rule = (problem, schedule) => {
  const counts = new Map<string, number>(problem.activities.map((activity) => [activity.id, 0]));
  const found: Violation[] = [];
  for (const { activity } of [...schedule.placements, ...schedule.unplaced]) {
    const count = counts.get(activity);
    if (count === undefined) found.push({ rule: 'completeness', message: `${activity} is not in the problem.`, activities: [activity] });
    else counts.set(activity, count + 1);
  }
  for (const [id, count] of counts) {
    if (count !== 1) found.push({ rule: 'completeness', message: `${id} is listed ${count} times, not once.`, activities: [id] });
  }
  return found;
};

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-6 * Math.max(1, Math.abs(b));
}

/** Another start, other people, or no place at all. */
function isMoved({ previousCrew, previousStart }: Activity, placement: Placement | undefined): boolean {
  if (placement === undefined || placement.start !== previousStart) return true;
  return previousCrew !== undefined && previousCrew.toSorted().join('\n') !== placement.crew.toSorted().join('\n');
}

/** Quotas of which too few have ended in time. */
function countMissed({ quotas }: Problem, ends: ReadonlyMap<string, number>): number {
  return (quotas ?? []).filter(({ among, at, least }) => among.filter((id) => (ends.get(id) ?? Infinity) <= at).length < least).length;
}

/** What the spans cost in which somebody who counts has a piece of work. */
function sumUpkeep({ upkeep }: Problem, dated: readonly Dated[]): number {
  const counts = new Set(upkeep?.resources);
  const pieces = dated
    .filter(({ activity, placement }) => [...placement.crew, ...activity.demands.filter(({ amount }) => amount > 0).map(({ resource }) => resource)].some((id) => counts.has(id)))
    .flatMap(({ placement }) => placement.pieces);
  const isUsed = (start: number, end: number) => pieces.some((piece) => piece.start < end && piece.end > start);
  return (upkeep?.spans ?? []).reduce((sum, { cost, within }) => sum + (isUsed(within.start, within.end) ? cost : 0), 0);
}

/** The score is what its dates give. What is left out is late up to the horizon, and moved when it had a place before. */
export const checkScore: Rule = (problem, schedule) => {
  const dated = listDated(problem, schedule);
  const ends = new Map(dated.map(({ activity, placement }) => [activity.id, placement.end]));
  const places = new Map(dated.map(({ activity, placement }) => [activity.id, placement]));
  const late = problem.activities.map((activity) => {
    const { due } = activity;
    return due === undefined ? 0 : due.weight * Math.max(0, (ends.get(activity.id) ?? problem.horizon) - due.at);
  });
  const moved = problem.activities.filter((activity) => activity.previousStart !== undefined && isMoved(activity, places.get(activity.id)));
  const expected: Score = {
    unplaced: problem.activities.length - dated.length,
    tardiness: late.reduce((sum, minutes) => sum + minutes, 0),
    shortages: countMissed(problem, ends),
    moved: moved.length,
    makespan: Math.max(0, ...ends.values()),
    cost: sumUpkeep(problem, dated),
    sumOfEnds: [...ends.values()].reduce((sum, end) => sum + end, 0),
  };
  const { score } = schedule;
  const names = ['unplaced', 'tardiness', 'shortages', 'moved', 'makespan', 'cost', 'sumOfEnds'] as const;
  return names.filter((name) => !isNear(score[name], expected[name])).map((name): Violation => ({
    rule: 'score', message: `${name} is given as ${score[name]}, the dates give ${expected[name]}.`, activities: [],
  }));
};

import { listDated, type Rule, type Violation } from './violation';

/** Nothing starts before its release. */
export const checkReleases: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }): readonly Violation[] => {
  if (placement.start >= (activity.release ?? 0)) return [];
  return [{ rule: 'release', message: `${activity.id} starts at ${placement.start}, before its release at ${activity.release ?? 0}.`, activities: [activity.id] }];
});

/** Nothing ends after its hard latest end. */
export const checkLatestEnds: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }): readonly Violation[] => {
  if (activity.latestEnd === undefined || placement.end <= activity.latestEnd) return [];
  return [{ rule: 'latest-end', message: `${activity.id} ends at ${placement.end}, after ${activity.latestEnd}.`, activities: [activity.id] }];
});

/** What a person fixed starts there. */
export const checkPins: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }): readonly Violation[] => {
  if (activity.pin === undefined || placement.start === activity.pin.start) return [];
  return [{ rule: 'pin', message: `${activity.id} starts at ${placement.start} but is fixed at ${activity.pin.start}.`, activities: [activity.id] }];
});

/** Everything ends by the horizon. */
export const checkHorizon: Rule = (problem, schedule) => listDated(problem, schedule).flatMap(({ activity, placement }): readonly Violation[] => {
  if (placement.end <= problem.horizon) return [];
  return [{ rule: 'horizon', message: `${activity.id} ends at ${placement.end}, after the horizon ${problem.horizon}.`, activities: [activity.id] }];
});

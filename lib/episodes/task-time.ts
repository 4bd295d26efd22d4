/** How long a task is expected to take, by what was typed or by experience. */
import { isFilmedAhead, type Category, type Coverage, type Shot, type Task } from '@/lib/build';
import { p80Of, sessionTime, threePointDeviation, threePointMean, usualCounts, type FilmingAssumptions, type SessionTime, type TimeTerm } from '@/lib/estimate';

/** What experience says: how filming goes, and by how much hands-on and filming times are usually missed. */
export interface Experience {
  readonly filming: FilmingAssumptions;
  readonly handsOnFactor: (category: Category) => number;
  readonly filmingFactor: (coverage: Coverage) => number;
}

/** Shots filmed in the task itself: those that show how it was before an irreversible step are filmed ahead of it. */
export function shotsWithin(task: Task): readonly Shot[] {
  return task.shots.filter((shot) => !isFilmedAhead(task, shot));
}

/** Hands-on time and the typed times of its shots. */
export function typedTime(task: Task): SessionTime {
  const filming = shotsWithin(task).reduce((sum, shot) => sum + shot.time, 0);
  const handsOn = threePointMean(task.effort);
  const deviation = threePointDeviation(task.effort);
  const terms: readonly TimeTerm[] = [{ what: 'hands-on', minutes: handsOn }, { what: 'shots', minutes: filming }];
  return { mean: handsOn + filming, deviation, p80: p80Of(handsOn + filming, deviation), terms };
}

/** Counts from the shot list, or those usual for the coverage when there is none. */
function countsOf(task: Task, shots: readonly Shot[], filming: FilmingAssumptions) {
  if (shots.length === 0) return usualCounts(filming.habits[task.coverage], threePointMean(task.effort), task.irreversible);
  const again = task.irreversible ? 0 : shots.length;
  return { positions: 0, shots: again, oneWayShots: shots.length - again, oneWaySetUps: task.irreversible ? 1 : 0, packUps: filming.habits[task.coverage].packUps };
}

/**
 * The time by experience: hands-on time and filming each by their factor. Listed shots count with the times typed for them, which
 * hold positions and framing; further takes, one-way set-ups and packing up come on top. Without a list the coverage's usual counts do.
 */
export function experiencedTime(task: Task, experience: Experience): SessionTime {
  const { filming } = experience;
  const shots = shotsWithin(task);
  const [handsOn, camera] = [experience.handsOnFactor(task.category), experience.filmingFactor(task.coverage)];
  const counted = sessionTime(task.effort, countsOf(task, shots, filming), filming.times);
  const typed = shots.reduce((sum, shot) => sum + shot.time, 0);
  const terms = counted.terms.map(({ what, minutes }): TimeTerm => {
    if (what === 'hands-on') return { what, minutes: minutes * handsOn };
    return { what, minutes: (what === 'shots' && shots.length > 0 ? typed : minutes) * camera };
  });
  const own = threePointDeviation(task.effort);
  const mean = terms.reduce((sum, term) => sum + term.minutes, 0);
  const deviation = Math.hypot(own * handsOn, Math.sqrt(Math.max(0, counted.deviation ** 2 - own ** 2)) * camera);
  return { mean, deviation, p80: p80Of(mean, deviation), terms };
}

/** Minutes of a session time that the camera causes. */
export function filmingMinutes(time: SessionTime): number {
  return time.terms.reduce((sum, term) => sum + (term.what === 'hands-on' ? 0 : term.minutes), 0);
}

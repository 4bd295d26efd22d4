/** How long a task is expected to take, by what was typed or by experience. */
import { isFilmedAhead, type Category, type Coverage, type Shot, type Task } from '@/lib/build';
import { p80Of, relativeSpread, sessionTime, threePointDeviation, threePointMean, usualCounts, type FilmingAssumptions, type SessionTime, type TimeTerm } from '@/lib/estimate';

/** By how much the times of a sort are usually missed, and how sure that is. */
export interface TimeFactor {
  /** Typical actual length as a multiple of the estimate. */
  readonly factor: number;
  /** Of ln(actual / estimate): uncertainty of the factor, which all work of the sort shares. */
  readonly deviation: number;
  /** Of ln(actual / estimate): spread of one task about the factor. */
  readonly residual: number;
  /** Finished tasks of that sort behind it. */
  readonly n: number;
}

/** Times as they were typed. */
export const AS_TYPED: TimeFactor = { factor: 1, deviation: 0, residual: 0, n: 0 };

/** What experience says: how filming goes, and by how much hands-on and filming times are usually missed. */
export interface Experience {
  readonly filming: FilmingAssumptions;
  readonly handsOn: (category: Category) => TimeFactor;
  readonly camera: (coverage: Coverage) => TimeFactor;
}

/** Spread that comes from a factor: all work under the same key is wrong together. */
export interface SharedSpread {
  /** `hands-on paint`. */
  readonly key: string;
  /** Minutes. */
  readonly deviation: number;
}

/** Expected session time of a task. `deviation` holds both its own spread and the shared ones. */
export interface TaskTime extends SessionTime {
  /** Spread of this task alone, minutes. */
  readonly own: number;
  readonly shared: readonly SharedSpread[];
}

/** Shots filmed in the task itself: those that show how it was before an irreversible step are filmed ahead of it. */
export function shotsWithin(task: Task): readonly Shot[] {
  return task.shots.filter((shot) => !isFilmedAhead(task, shot));
}

/** Hands-on time and the typed times of its shots. */
export function typedTime(task: Task): TaskTime {
  const filming = shotsWithin(task).reduce((sum, shot) => sum + shot.time, 0);
  const handsOn = threePointMean(task.effort);
  const deviation = threePointDeviation(task.effort);
  const terms: readonly TimeTerm[] = [{ what: 'hands-on', minutes: handsOn }, { what: 'shots', minutes: filming }];
  return { mean: handsOn + filming, deviation, p80: p80Of(handsOn + filming, deviation), terms, own: deviation, shared: [] };
}

/** Counts from the shot list, or those usual for the coverage when there is none. */
function countsOf(task: Task, shots: readonly Shot[], filming: FilmingAssumptions) {
  if (shots.length === 0) return usualCounts(filming.habits[task.coverage], threePointMean(task.effort), task.irreversible);
  const again = task.irreversible ? 0 : shots.length;
  return { positions: 0, shots: again, oneWayShots: shots.length - again, oneWaySetUps: task.irreversible ? 1 : 0, packUps: filming.habits[task.coverage].packUps };
}

/** One kind of time under its factor: the task's own spread is the wider of the estimated and the one seen in finished work. */
function spread(mean: number, estimated: number, { factor, deviation, residual }: TimeFactor) {
  return { own: Math.max(estimated * factor, mean * relativeSpread(residual)), shared: mean * relativeSpread(deviation) };
}

/**
 * The time by experience: hands-on time and filming each by their factor. Listed shots count with the times typed for them, which
 * hold positions and framing; further takes, one-way set-ups and packing up come on top. Without a list the coverage's usual counts do.
 * The spread has three parts: of the task itself, of its category's factor, of its coverage's factor.
 */
export function experiencedTime(task: Task, experience: Experience): TaskTime {
  const { filming } = experience;
  const shots = shotsWithin(task);
  const [handsOn, camera] = [experience.handsOn(task.category), experience.camera(task.coverage)];
  const counted = sessionTime(task.effort, countsOf(task, shots, filming), filming.times);
  const typed = shots.reduce((sum, shot) => sum + shot.time, 0);
  const terms = counted.terms.map(({ what, minutes }): TimeTerm => {
    if (what === 'hands-on') return { what, minutes: minutes * handsOn.factor };
    return { what, minutes: (what === 'shots' && shots.length > 0 ? typed : minutes) * camera.factor };
  });
  const estimated = threePointDeviation(task.effort);
  const mean = terms.reduce((sum, term) => sum + term.minutes, 0);
  const filmed = terms.reduce((sum, term) => sum + (term.what === 'hands-on' ? 0 : term.minutes), 0);
  const work = spread(mean - filmed, estimated, handsOn);
  const pictures = spread(filmed, Math.sqrt(Math.max(0, counted.deviation ** 2 - estimated ** 2)), camera);
  const own = Math.hypot(work.own, pictures.own);
  const shared = [{ key: `hands-on ${task.category}`, deviation: work.shared }, { key: `filming ${task.coverage}`, deviation: pictures.shared }].filter(({ deviation }) => deviation > 0);
  const deviation = Math.hypot(own, ...shared.map((each) => each.deviation));
  return { mean, deviation, p80: p80Of(mean, deviation), terms, own, shared };
}

/** Minutes of a session time that the camera causes. */
export function filmingMinutes(time: SessionTime): number {
  return time.terms.reduce((sum, term) => sum + (term.what === 'hands-on' ? 0 : term.minutes), 0);
}

/** What the finished work of a series has shown about its estimates. */
import type { Category, Coverage, SeriesDocument, Task, TimeLog } from '@/lib/build';
import { COMMON_PRACTICE, factorOf, isLearnable, learnFactors, threePointMean, type FilmingAssumptions, type Learned, type Observation } from '@/lib/estimate';
import { minutesBetween } from '@/lib/units';
import { AS_TYPED, experiencedTime, filmingMinutes, typedTime, type Experience, type TaskTime, type TimeFactor } from './task-time';

/** A finished task against its estimate, minutes. */
export interface TaskObservation<C extends string = string> extends Observation<C> {
  readonly taskId: string;
  readonly name: string;
}

export interface SeriesExperience {
  readonly handsOn: readonly TaskObservation<Category>[];
  readonly filming: readonly TaskObservation<Coverage>[];
  readonly learnedHandsOn: Learned<Category>;
  readonly learnedFilming: Learned<Coverage>;
}

/** How a series films: its own times, and its own counts where it has them. */
export function filmingOf({ series: { filming } }: SeriesDocument): FilmingAssumptions {
  const own = filming.own.map(({ coverage, ...counts }) => [coverage, { ...COMMON_PRACTICE.habits[coverage], ...counts }] as const);
  return { times: filming, habits: { ...COMMON_PRACTICE.habits, ...Object.fromEntries(own) } };
}

function spent(logs: readonly TimeLog[], activity: TimeLog['activity']): number {
  return logs.reduce((sum, log) => sum + (log.activity === activity && log.end !== null ? minutesBetween(log.start, log.end) : 0), 0);
}

function observe<C extends string>(task: Task, category: C, estimate: number, actual: number, logs: readonly TimeLog[]): TaskObservation<C> {
  return { taskId: task.id, name: task.name, category, estimate, actual, wasInterrupted: logs.some((log) => log.wasInterrupted) };
}

/** The series' own way of filming, with no factor on any time. */
export function unlearned(document: SeriesDocument): Experience {
  return { filming: filmingOf(document), handsOn: () => AS_TYPED, camera: () => AS_TYPED };
}

/** Compares the finished tasks that have time logs, none still running, with what was estimated for them. Unfinished work says nothing yet. */
export function gatherExperience(document: SeriesDocument): SeriesExperience {
  const plain = unlearned(document);
  const finished = document.tasks.filter((task) => task.doneAt !== null).map((task) => ({ task, logs: document.timeLogs.filter((log) => log.taskId === task.id) }))
    .filter(({ logs }) => logs.length > 0 && logs.every((log) => log.end !== null));
  const handsOn = finished.map(({ task, logs }) => observe(task, task.category, threePointMean(task.effort), spent(logs, 'hands-on'), logs)).filter(({ actual }) => actual > 0);
  const filming = finished.map(({ task, logs }) => observe(task, task.coverage, filmingMinutes(experiencedTime(task, plain)), spent(logs, 'filming'), logs))
    .filter(({ estimate, actual }) => estimate > 0 && actual > 0);
  return { handsOn, filming, learnedHandsOn: learnFactors(handsOn), learnedFilming: learnFactors(filming) };
}

function readFactor<C extends string>(learned: Learned<C>, category: C): TimeFactor {
  if (!learned.isEnough) return AS_TYPED;
  const { factor, deviation, n } = factorOf(learned, category);
  return { factor, deviation, residual: Math.sqrt(learned.basis.variance), n };
}

/** The factors in use: 1 while there is too little finished work to go by. */
export function experienceOf(document: SeriesDocument): Experience {
  const { learnedHandsOn, learnedFilming } = gatherExperience(document);
  return {
    filming: filmingOf(document),
    handsOn: (category) => readFactor(learnedHandsOn, category),
    camera: (coverage) => readFactor(learnedFilming, coverage),
  };
}

/** The time of each task as the series plans it: by experience where its switch is on, else as typed. */
export function timesOf(document: SeriesDocument): (task: Task) => TaskTime {
  if (!document.series.usesExperience) return typedTime;
  const experience = knownExperience(document);
  return (task) => experiencedTime(task, experience);
}

const known = new WeakMap<SeriesDocument, Experience>();

/** Asked for once a task, and a document never changes. */
function knownExperience(document: SeriesDocument): Experience {
  const experience = known.get(document) ?? experienceOf(document);
  known.set(document, experience);
  return experience;
}

/** What finished work says of the hands-on time of a task, on the scale of ln(actual / estimate). */
export interface LearnedTaskFactor {
  /** Tasks of one category are wrong together. */
  readonly category: Category;
  readonly mean: number;
  /** Uncertainty of the mean, shared by the category. */
  readonly deviation: number;
  /** Spread of one task about the mean. */
  readonly residual: number;
  /** Finished tasks of the category. */
  readonly n: number;
}

/**
 * The learned factor of each open task, by its id, for whoever draws lengths at random: the hands-on time is the estimate times
 * exp(mean + one draw of `deviation` a category + one of `residual` a task). Empty while the series plans by the typed times, or too
 * little is finished.
 */
export function learnedTaskFactors(document: SeriesDocument): ReadonlyMap<string, LearnedTaskFactor> {
  if (!document.series.usesExperience || !gatherExperience(document).learnedHandsOn.isEnough) return new Map();
  const { handsOn } = knownExperience(document);
  return new Map(document.tasks.filter((task) => task.doneAt === null).map(({ id, category }) => {
    const { factor, deviation, residual, n } = handsOn(category);
    return [id, { category, mean: Math.log(factor), deviation, residual, n }];
  }));
}

/** What the switch changes: session time of all open work, minutes. */
export function compareExperience(document: SeriesDocument): { readonly typed: number; readonly experienced: number; readonly tasks: number; readonly observations: number } {
  const experience = experienceOf(document);
  const open = document.tasks.filter((task) => task.doneAt === null);
  const { handsOn, filming } = gatherExperience(document);
  return {
    typed: open.reduce((sum, task) => sum + typedTime(task).mean, 0),
    experienced: open.reduce((sum, task) => sum + experiencedTime(task, experience).mean, 0),
    tasks: open.length,
    observations: [...handsOn, ...filming].filter(isLearnable).length,
  };
}

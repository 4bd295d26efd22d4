/** What the finished work of a series has shown about its estimates. */
import type { Category, Coverage, SeriesDocument, Task, TimeLog } from '@/lib/build';
import { COMMON_PRACTICE, factorOf, isLearnable, learnFactors, threePointMean, type FilmingAssumptions, type Learned, type Observation, type SessionTime } from '@/lib/estimate';
import { minutesBetween } from '@/lib/units';
import { experiencedTime, filmingMinutes, typedTime, type Experience } from './task-time';

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

/** Compares the finished tasks that have time logs, none still running, with what was estimated for them. Unfinished work says nothing yet. */
export function gatherExperience(document: SeriesDocument): SeriesExperience {
  const plain: Experience = { filming: filmingOf(document), handsOnFactor: () => 1, filmingFactor: () => 1 };
  const finished = document.tasks.filter((task) => task.doneAt !== null).map((task) => ({ task, logs: document.timeLogs.filter((log) => log.taskId === task.id) }))
    .filter(({ logs }) => logs.length > 0 && logs.every((log) => log.end !== null));
  const handsOn = finished.map(({ task, logs }) => observe(task, task.category, threePointMean(task.effort), spent(logs, 'hands-on'), logs)).filter(({ actual }) => actual > 0);
  const filming = finished.map(({ task, logs }) => observe(task, task.coverage, filmingMinutes(experiencedTime(task, plain)), spent(logs, 'filming'), logs))
    .filter(({ estimate, actual }) => estimate > 0 && actual > 0);
  return { handsOn, filming, learnedHandsOn: learnFactors(handsOn), learnedFilming: learnFactors(filming) };
}

/** The factors in use: 1 while there is too little finished work to go by. */
export function experienceOf(document: SeriesDocument): Experience {
  const { learnedHandsOn, learnedFilming } = gatherExperience(document);
  return {
    filming: filmingOf(document),
    handsOnFactor: (category) => (learnedHandsOn.isEnough ? factorOf(learnedHandsOn, category).factor : 1),
    filmingFactor: (coverage) => (learnedFilming.isEnough ? factorOf(learnedFilming, coverage).factor : 1),
  };
}

/** The time of each task as the series plans it: by experience where its switch is on, else as typed. */
export function timesOf(document: SeriesDocument): (task: Task) => SessionTime {
  if (!document.series.usesExperience) return typedTime;
  // Asked for once a task, and a document never changes.
  const experience = known.get(document) ?? experienceOf(document);
  known.set(document, experience);
  return (task) => experiencedTime(task, experience);
}

const known = new WeakMap<SeriesDocument, Experience>();

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

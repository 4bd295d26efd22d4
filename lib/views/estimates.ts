/** Estimates against what the work took. */
import type { SeriesDocument } from '@/lib/build';
import { formatWorkLength } from '@/lib/calendar';
import { compareExperience, experiencedTime, experienceOf, gatherExperience, typedTime, type TaskObservation } from '@/lib/episodes';
import { FEWEST_OBSERVATIONS, type Learned, type LearnedFactor } from '@/lib/estimate';
import type { EstimatesView, FactorRow, OpenTaskRow, PlotPoint } from './episodes-model';
import { formatCount } from './week-words';

const times = (value: number): string => `× ${value.toFixed(2)}`;

function showFactor(what: string, { factor, interval, n, own, shrinkage }: LearnedFactor): FactorRow {
  return {
    what, n, factor: times(factor), interval: `${times(interval.low)} to ${times(interval.high)}`, own: own === null ? '–' : times(own), borrowed: `${Math.round(100 * shrinkage)} %`,
  };
}

function showFactors<C extends string>({ byCategory, unseen, basis }: Learned<C>): readonly FactorRow[] {
  if (basis.n === 0) return [];
  return [...[...byCategory].map(([category, factor]) => showFactor(category, factor)), showFactor('anything else', unseen)];
}

function plot(observations: readonly TaskObservation[], kind: PlotPoint['kind']): readonly PlotPoint[] {
  return observations.map(({ taskId, name, category, estimate, actual, wasInterrupted }) => ({ key: `${kind}:${taskId}`, name, kind, category, estimate, actual, wasInterrupted }));
}

/** What the switch does to the open work, in a sentence. */
export function tellEffect(document: SeriesDocument): string {
  const { typed, experienced, tasks } = compareExperience(document);
  const change = Math.round(experienced - typed);
  const share = typed > 0 ? Math.round((100 * Math.abs(change)) / typed) : 0;
  const words = change === 0 ? 'changes nothing' : `${document.series.usesExperience ? 'makes' : 'would make'} ${formatCount(tasks, 'open task')} ${formatWorkLength(Math.abs(change))} ${change > 0 ? 'longer' : 'shorter'} together, ${share} %`;
  return `Planning by experience ${words}: ${formatWorkLength(Math.round(experienced))} instead of ${formatWorkLength(Math.round(typed))}.`;
}

function tellEnough(learned: Learned, what: string): string {
  return learned.isEnough ? `${what} go by ${formatCount(learned.basis.n, 'finished task')}` : `${what} stay as typed: ${formatCount(learned.basis.n, 'finished task')} of at least ${FEWEST_OBSERVATIONS}`;
}

const MOST_OPEN = 12;

const say = (minutes: number): string => formatWorkLength(Math.round(minutes));

const sayFrom = (n: number, category: string): string => (n === 0 ? `other sorts, none of ${category} yet` : formatCount(n, `finished task of ${category}`, `finished tasks of ${category}`));

/** Open tasks, the one whose P80 changes most first. */
function listOpen(document: SeriesDocument): readonly OpenTaskRow[] {
  const experience = experienceOf(document);
  const rows = document.tasks.filter((task) => task.doneAt === null).map((task) => ({ task, typed: typedTime(task), learned: experiencedTime(task, experience) }));
  return rows.toSorted((a, b) => Math.abs(b.learned.p80 - b.typed.p80) - Math.abs(a.learned.p80 - a.typed.p80)).slice(0, MOST_OPEN).map(({ task, typed, learned }) => ({
    id: task.id, name: task.name, typed: say(typed.mean), typedP80: say(typed.p80), experienced: say(learned.mean), experiencedP80: say(learned.p80),
    from: sayFrom(experience.handsOn(task.category).n, task.category),
  }));
}

/** The page of estimates. Pure. */
export function viewEstimates(document: SeriesDocument): EstimatesView {
  const { handsOn, filming, learnedHandsOn, learnedFilming } = gatherExperience(document);
  const points = [...plot(handsOn, 'hands-on'), ...plot(filming, 'filming')];
  const leftOut = learnedHandsOn.leftOut + learnedFilming.leftOut;
  return {
    seriesId: document.series.id,
    revision: document.series.revision,
    usesExperience: document.series.usesExperience,
    effect: tellEffect(document),
    note: `${tellEnough(learnedHandsOn, 'Hands-on times')}; ${tellEnough(learnedFilming, 'filming times').replace('as typed', 'by the counts of the series')}.${leftOut > 0 ? ` ${formatCount(leftOut, 'interrupted one is', 'interrupted ones are')} left out.` : ''}`,
    handsOn: showFactors(learnedHandsOn),
    filming: showFactors(learnedFilming),
    open: listOpen(document),
    points,
    reach: points.reduce((most, point) => Math.max(most, point.estimate, point.actual), 60),
  };
}

/** Facts of episodes that more than one page needs. */
import { crewSize, deriveOrder, shootDue, shownStates, type Episode, type Segment, type SeriesDocument, type Task } from '@/lib/build';
import { addDays, compareDates, dateOf, type CivilDate } from '@/lib/calendar';
import {
  budgetEpisodes, chargeWork, checkAiringOrder, timesOf, type BankedEpisode, type EpisodeBudget, type ShownSegment, type SponsoredEpisode,
} from '@/lib/episodes';
import { isFilmed, type PlanResult } from '@/lib/plan';
import type { Issue } from '@/lib/result';
import { addMinutes, instant, type Instant } from '@/lib/units';
import type { RuntimeView, Standing } from './episodes-model';

export interface EpisodesInput {
  readonly document: SeriesDocument;
  /** The plan that counts, null before the first. */
  readonly plan: { readonly result: Pick<PlanResult, 'blocks' | 'episodes'> } | null;
  readonly now: Instant;
}

export const STAGES = ['planned', 'recorded', 'cut', 'cleared', 'released'] as const satisfies readonly Episode['status'][];

const rounded = (value: number): number => Math.round(value * 10) / 10;

/** A text of a list of words, the first one large. */
const WORDS: Readonly<Record<EpisodeBudget['verdict'], string>> = { fits: 'Fits', tight: 'Tight', short: 'Too little time', done: 'Nothing left to do' };

export function showStanding(budget: EpisodeBudget | undefined): Standing {
  const verdict = budget?.verdict ?? 'done';
  return { verdict, word: WORDS[verdict], text: budget?.words ?? 'No workshop time is needed any more.' };
}

export function segmentsOf(document: SeriesDocument, episodeId: string | null): readonly Segment[] {
  return document.segments.filter((segment) => segment.episodeId === episodeId);
}

/** Minutes on screen with titles, against the wish. No segments: no titles either. */
export function showRuntime(document: SeriesDocument, segments: readonly Segment[]): RuntimeView {
  const { runtime: { min, target, max }, titles } = document.series;
  const minutes = segments.length === 0 ? 0 : rounded(segments.reduce((sum, segment) => sum + segment.length, titles));
  const off = rounded(Math.abs(minutes - target));
  const wish = off === 0 ? 'as wished' : `${off} ${minutes < target ? 'under' : 'over'} the wish of ${target}`;
  const bound = minutes < min ? `, ${rounded(min - minutes)} short of the shortest` : minutes > max ? `, ${rounded(minutes - max)} over the longest` : '';
  if (segments.length === 0) return { minutes, target, min, max, isInside: false, text: `nothing on it yet of ${target} min` };
  return { minutes, target, min, max, isInside: minutes >= min && minutes <= max, text: `${minutes} min, ${wish}${bound}` };
}

/** Episodes that still have to be recorded, the one that comes out first in front. */
export function listOpenEpisodes({ episodes }: SeriesDocument): readonly Episode[] {
  return episodes.filter((episode) => episode.status === 'planned').toSorted((a, b) => compareDates(a.releaseDate, b.releaseDate) || a.order - b.order);
}

/** Crew time of an episode's budget that is work of no episode or of a later one, minutes: it waits for it. */
export function timeOwedElsewhere(document: SeriesDocument, episodeId: string): number {
  const timeOf = timesOf(document);
  const paidBy = chargeWork(document, listOpenEpisodes(document));
  return document.tasks.filter((task) => task.episodeId !== episodeId && paidBy.get(task.id) === episodeId)
    .reduce((sum, task) => sum + timeOf(task).mean * Math.max(1, crewSize(task)), 0);
}

/** Budgets of the episodes that still have to be recorded, served in the order they are due. */
export function listBudgets({ document, now }: EpisodesInput): ReadonlyMap<string, EpisodeBudget> {
  const timeOf = timesOf(document);
  const open = listOpenEpisodes(document);
  const paidBy = chargeWork(document, open);
  const budgets = budgetEpisodes({
    now,
    fillLimit: document.series.fillLimit,
    episodes: open.map((episode) => ({ id: episode.id, name: episode.name, due: shootDue(document.series, episode) })),
    tasks: document.tasks.flatMap((task) => {
      const episodeId = paidBy.get(task.id);
      if (episodeId === undefined) return [];
      const { mean, own, shared } = timeOf(task);
      return [{ id: task.id, name: task.name, episodeId, mean, deviation: own, shared, crew: Math.max(1, crewSize(task)), isFilmed: isFilmed(task) }];
    }),
    sessions: document.sessions.map(({ start, end, crewIds, isRecording }) => ({ start, end, people: crewIds.length, isRecording })),
  });
  return new Map(budgets.map((budget) => [budget.episodeId, budget]));
}

/** When all work of a task ends by the plan, or ended; null: not known. */
function recordedAt({ plan }: EpisodesInput, task: Task): Instant | null {
  if (task.doneAt !== null) return task.doneAt;
  const ends = (plan?.result.blocks ?? []).filter((block) => block.kind === 'task' && block.subject.id === task.id).map((block) => block.end);
  return ends.length === 0 ? null : instant(Math.max(...ends));
}

/** When the last of the work that a segment shows is recorded; null: nothing known of it. */
export function segmentReadyAt(input: EpisodesInput, segment: Segment): Instant | null {
  const tasks = input.document.tasks.filter((task) => segment.taskIds.includes(task.id));
  const ends = tasks.map((task) => recordedAt(input, task)).filter((end) => end !== null);
  return ends.length === 0 ? null : instant(Math.max(...ends));
}

/** The first day an episode can come out by the plan; null: not known, or out already. */
function feasibleOn({ document, plan, now }: EpisodesInput, episode: Episode): CivilDate | null {
  const { zone, leadDays } = document.series;
  const today = dateOf(now, zone);
  if (episode.status === 'released' || episode.status === 'cleared') return compareDates(today, episode.releaseDate) < 0 ? today : episode.releaseDate;
  if (episode.status === 'cut') return today;
  const tasks = document.tasks.filter((task) => task.episodeId === episode.id);
  const done = tasks.every((task) => task.doneAt !== null) ? tasks.reduce<number>((latest, task) => Math.max(latest, task.doneAt ?? 0), 0) : null;
  const recordedBy = episode.status === 'recorded' || (done !== null && done > 0)
    ? instant(done !== null && done > 0 ? done : now)
    : plan?.result.episodes.find((outlook) => outlook.episodeId === episode.id)?.recordedBy ?? null;
  if (recordedBy === null) return null;
  // Ready at midnight is ready on the day before.
  const ready = addDays(dateOf(addMinutes(recordedBy, -1), zone), leadDays);
  return compareDates(ready, today) < 0 ? today : ready;
}

export function listBanked(input: EpisodesInput): readonly BankedEpisode[] {
  return input.document.episodes.map((episode) => ({
    id: episode.id, name: episode.name, releaseDate: episode.releaseDate, finishedOn: feasibleOn(input, episode), isEvergreen: episode.isEvergreen,
  }));
}

export function readSponsored(input: EpisodesInput, episode: Episode): SponsoredEpisode {
  const runtime = 60 * showRuntime(input.document, segmentsOf(input.document, episode.id)).minutes;
  return { id: episode.id, name: episode.name, releaseDate: episode.releaseDate, feasibleOn: feasibleOn(input, episode), runtime };
}

/** States in which the work a segment shows has the parts: as its shots ask, else as it leaves them. */
function shownParts(document: SeriesDocument, segment: Segment): ShownSegment['parts'] {
  return document.tasks.filter((task) => segment.taskIds.includes(task.id)).flatMap(shownStates).flatMap(({ partId, stateId }) => {
    const part = document.parts.find((each) => each.id === partId);
    const stateIndex = part?.states.findIndex((state) => state.id === stateId) ?? -1;
    return part === undefined || stateIndex < 0 ? [] : [{ partId, partName: part.name, stateIndex, stateName: part.states[stateIndex]!.name }];
  });
}

/** Every episode's segments in the order they air, judged by the states of the parts in them. */
export function checkOrder(document: SeriesDocument): readonly Issue[] {
  const inOrder = document.episodes.toSorted((a, b) => compareDates(a.releaseDate, b.releaseDate) || a.order - b.order).flatMap((episode) => segmentsOf(document, episode.id));
  return checkAiringOrder(inOrder.map((segment) => ({ id: segment.id, name: segment.name, isFlashback: segment.isFlashback, parts: shownParts(document, segment) })));
}

/** Filmed irreversible tasks of an episode that no before-shot is asked for, not done yet. */
export function listBeforeMissing(document: SeriesDocument, episodeId: string): readonly Task[] {
  return document.tasks.filter((task) => task.episodeId === episodeId && task.doneAt === null && task.irreversible && isFilmed(task) && !task.shots.some((shot) => shot.purpose === 'before'));
}

/** Tasks of an episode that other open work of the same episode waits for. */
export function listNeededWithin(document: SeriesDocument, episodeId: string): ReadonlySet<string> {
  const own = new Set(document.tasks.filter((task) => task.episodeId === episodeId && task.doneAt === null).map((task) => task.id));
  return new Set(deriveOrder(document).filter(({ from, to }) => own.has(from.id) && own.has(to.id)).map(({ from }) => from.id));
}


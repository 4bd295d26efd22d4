/** One episode: load, then compute. */
import { crewSize, joinWords, shootDue, statesOf, type Episode, type Segment, type Session, type Task } from '@/lib/build';
import { addDays, dateOf, formatDay, formatLength, formatMoment, formatWorkLength } from '@/lib/calendar';
import {
  cameraNeed, checkSponsors, experiencedTime, experienceOf, filmingMinutes, findRelief, oneWayRisk, readObligation, shootingRatio, shotsWithin, timesOf, unlearned, USUAL_RATIO,
  type Balance, type Relief,
} from '@/lib/episodes';
import { isFilmed } from '@/lib/plan';
import type { Issue } from '@/lib/result';
import { minutesBetween } from '@/lib/units';
import type { ViewContext } from './context';
import { loadCheckedFacts } from './continuity-facts';
import { summariseContinuity, summariseSafety } from './episode-summaries';
import {
  checkOrder, listBeforeMissing, listBudgets, listNeededWithin, listOpenEpisodes, readSponsored, segmentReadyAt, segmentsOf, showRuntime, showStanding, timeOwedElsewhere, type EpisodesInput,
} from './episodes-facts';
import type { BalanceView, EpisodePageView, EpisodeView, SegmentRow, ShotRow, SponsorRow } from './episodes-model';
import { listRuntimeOffers } from './runtime-offers';
import { loadScene } from './safety-words';
import { tellShotRisk } from './shot-risk';
import { linkRecord } from './week-block';
import { formatCount } from './week-words';

const percent = (value: number): string => `${Math.round(100 * value)} %`;
const say = (minutes: number): string => (minutes < 0 ? `${formatWorkLength(Math.round(-minutes))} missing` : formatWorkLength(Math.round(minutes)));

function showBalance(what: string, balance: Balance): BalanceView {
  return {
    what,
    need: say(balance.need.mean),
    p80: say(balance.need.p80),
    earlier: say(balance.takenEarlier),
    available: `${say(balance.available)} in ${formatCount(balance.sessions, 'session')}`,
    left: say(balance.left),
    leftAtP80: say(balance.leftAtP80),
    isShort: balance.left < 0,
  };
}

const crewHours = ({ start, end, crewIds }: Session): number => minutesBetween(start, end) * crewIds.length;

/** Ways to free crew time: film a task with a fixed camera, leave out shots that need not be, move it behind the episode, add an evening. */
function listReliefs({ document }: EpisodesInput, episode: Episode): readonly Relief[] {
  const timeOf = timesOf(document);
  const needed = listNeededWithin(document, episode.id);
  const plain = unlearned(document);
  const later = listOpenEpisodes(document).find((each) => each.releaseDate > episode.releaseDate);
  const options = document.tasks.filter((task) => task.episodeId === episode.id && task.doneAt === null).flatMap((task): Relief[] => {
    const crew = Math.max(1, crewSize(task));
    const time = timeOf(task);
    const spare = shotsWithin(task).filter((shot) => !shot.mustHave && shot.filmedAt === null);
    const fixed: Task = { ...task, coverage: 'locked-off', shots: [] };
    const simpler = document.series.usesExperience && task.shots.length === 0 ? filmingMinutes(time) - filmingMinutes(experiencedTime(fixed, plain)) : 0;
    return [
      { kind: 'leave a shot out', taskId: task.id, words: `Leave out of “${task.name}”: ${joinWords(spare.map(({ name }) => name))}`, frees: spare.reduce((sum, shot) => sum + shot.time, 0) * crew },
      { kind: 'film simpler', taskId: task.id, words: `Film “${task.name}” with a fixed camera`, frees: isFilmed(task) ? simpler * crew : 0 },
      { kind: 'move later', taskId: task.id, words: `Move “${task.name}” to ${later === undefined ? 'a later episode' : `“${later.name}”`}`, frees: needed.has(task.id) ? 0 : time.mean * crew },
    ];
  });
  const due = shootDue(document.series, episode);
  const [evening] = document.sessions.filter(({ crewIds }) => crewIds.length > 0).toSorted((a, b) => crewHours(b) - crewHours(a));
  if (evening === undefined) return options;
  const length = formatWorkLength(minutesBetween(evening.start, evening.end));
  const words = `Add a session of ${length} with ${formatCount(evening.crewIds.length, 'person', 'people')}, like “${evening.name}”, before ${formatDay(dateOf(due, document.series.zone))}`;
  return [...options, { kind: 'add a session', taskId: null, words, frees: crewHours(evening) * document.series.fillLimit }];
}

function showRelief(input: EpisodesInput, episode: Episode, missing: number): EpisodeView['relief'] {
  return findRelief(listReliefs(input, episode), missing).map((set) => {
    const frees = set.reduce((sum, each) => sum + each.frees, 0);
    return {
      frees: say(frees),
      isEnough: frees >= missing,
      changes: set.map(({ words, taskId }) => ({ words, task: taskId === null ? null : linkRecord('task', taskId, input.document.tasks) })),
    };
  });
}

function showSegment(input: EpisodesInput, segment: Segment, due: number | null): SegmentRow {
  const { document } = input;
  const readyAt = segmentReadyAt(input, segment);
  const ends = { free: null, 'ends the episode': 'ends its episode', 'never ends it': 'never the last one' } as const;
  const isLate = readyAt !== null && due !== null && readyAt > due;
  const tasks = document.tasks.filter((task) => segment.taskIds.includes(task.id));
  const facts = [
    readyAt === null ? (tasks.length > 0 ? 'recording not in the plan' : null) : `recorded ${formatMoment(readyAt, document.series.zone)}${isLate ? ', after the recording is due' : ''}`,
    segment.hook > 0 ? `pulls ${percent(segment.hook)}` : null,
    segment.hang > 0 ? `leaves ${percent(segment.hang)} open` : null,
    ends[segment.ending],
    segment.isEvergreen ? 'fits any episode' : null,
    segment.thread === '' ? null : `thread ${segment.thread}`,
  ].filter((fact) => fact !== null);
  return { id: segment.id, revision: segment.revision, name: segment.name, length: segment.length, isResult: segment.isResult, role: segment.role, facts, readyAt };
}

function listShots({ document }: EpisodesInput, episode: Episode): readonly ShotRow[] {
  return document.tasks.filter((task) => task.episodeId === episode.id).flatMap((task) => task.shots.map((shot) => ({
    key: `${task.id}:${shot.id}`,
    name: shot.name,
    purpose: shot.purpose,
    task: linkRecord('task', task.id, document.tasks),
    isMustHave: shot.mustHave,
    parts: statesOf(shot).map(({ partId, stateId }) => {
      const part = document.parts.find(({ id }) => id === partId);
      return `${part?.name ?? 'a part that is gone'}: ${part?.states.find(({ id }) => id === stateId)?.name ?? 'in a state that is gone'}`;
    }).join(', '),
    risk: tellShotRisk(task, shot),
    state: shot.filmedAt !== null ? `filmed ${formatMoment(shot.filmedAt, document.series.zone)}` : task.doneAt !== null ? 'its work is done' : shot.purpose === 'before' && task.irreversible ? 'to be filmed before the work starts' : 'to be filmed',
  })));
}

function tellShots({ document }: EpisodesInput, episode: Episode): readonly string[] {
  const once = document.tasks.filter((task) => task.episodeId === episode.id && task.doneAt === null && task.irreversible && isFilmed(task));
  const shots = once.reduce((sum, task) => sum + Math.max(1, shotsWithin(task).length), 0);
  const missing = listBeforeMissing(document, episode.id);
  const words: string[] = [];
  if (shots > 0) {
    const [one, two] = [oneWayRisk(shots, 1).any, oneWayRisk(shots, 2).any];
    words.push(`${formatCount(shots, 'shot')} of ${formatCount(once.length, 'step that happens once', 'steps that happen once')}: the chance to lose at least one is ${percent(one)} with one camera, ${percent(two)} with two. Common practice, no source: one in twenty a shot and camera.`);
  }
  const waiting = once.flatMap((task) => task.shots.filter((shot) => shot.purpose === 'before' && shot.filmedAt === null)).length;
  if (waiting > 0) words.push(`${formatCount(waiting, 'before-shot')} to be filmed before work that happens once.`);
  if (missing.length > 0) words.push(`No before-shot is asked for: ${joinWords(missing.map((task) => `“${task.name}”`))}. Add one, or it cannot be shown how it was.`);
  return words;
}

/** Screen minutes, what is recorded for them, and what that needs. */
function tellCamera({ document }: EpisodesInput, episode: Episode, screen: number): readonly string[] {
  const filmed = document.tasks.filter((task) => task.episodeId === episode.id && isFilmed(task));
  const experience = experienceOf(document);
  const recorded = filmed.reduce((sum, task) => sum + filmingMinutes(experiencedTime(task, experience)), 0);
  const ratio = shootingRatio(recorded, screen);
  const expected = screen * USUAL_RATIO;
  const need = cameraNeed(document.series.camera, expected);
  if (screen === 0) return ['No segments yet, so nothing to record for the screen.'];
  return [
    `${USUAL_RATIO} min are recorded for a minute on screen (10 to 30 is common practice, no source): ${formatLength(Math.round(expected))} a camera, ${Math.ceil(need.gigabytes)} GB to keep.`,
    ratio === null || recorded === 0 ? 'No filming is listed for its work yet.' : `Its filmed work holds ${formatWorkLength(Math.round(recorded))} of camera time, ${Math.round(ratio * 10) / 10} min for each minute on screen.`,
  ];
}

function showSponsors(input: EpisodesInput, episode: Episode): readonly SponsorRow[] {
  const all = input.document.sponsorships;
  const issues = checkSponsors(readSponsored(input, episode), all.map(readObligation));
  return all.filter((one) => one.episodeId === episode.id).map((one) => ({
    id: one.id,
    name: one.name,
    text: [
      one.sponsor, one.what, `At least ${one.minimumSeconds} s${one.part === 'anywhere' ? '' : ` in the ${one.part}`}.`,
      one.dueDate === null ? null : `Released by ${formatDay(one.dueDate)}.`, one.exclusiveIn === '' ? null : `No other in ${one.exclusiveIn}.`,
    ].filter((text) => text !== null && text !== '').join(' · '),
    issues: issues.filter(({ subjects }) => subjects[0]?.id === one.id),
  }));
}

function listWarnings(document: EpisodesInput['document'], own: readonly Segment[]): readonly Issue[] {
  const ids = new Set(own.map((segment) => segment.id));
  return checkOrder(document).filter(({ subjects }) => subjects.some(({ id }) => ids.has(id)));
}

/** Everything the page of an episode shows; null when there is none of that id. Pure. */
export function computeEpisode(input: EpisodesInput, id: string): EpisodeView | null {
  const { document } = input;
  const { series } = document;
  const index = document.episodes.findIndex((each) => each.id === id);
  const episode = document.episodes[index];
  if (episode === undefined) return null;
  const due = shootDue(series, episode);
  const budget = episode.status === 'planned' ? listBudgets(input).get(id) : undefined;
  const own = segmentsOf(document, id);
  const runtime = showRuntime(document, own);
  const missing = budget === undefined || budget.verdict === 'fits' || budget.verdict === 'done' ? 0 : -Math.min(budget.all.leftAtP80, budget.filmed.need.mean > 0 ? budget.filmed.leftAtP80 : 0);
  const elsewhere = budget === undefined ? 0 : timeOwedElsewhere(document, id);
  return {
    seriesId: series.id, id, name: episode.name, number: index + 1,
    above: `Episode ${index + 1} · ${episode.status}`,
    lead: `Out ${formatDay(episode.releaseDate)}; recorded by the end of ${formatDay(addDays(dateOf(due, series.zone), -1))}.`,
    standing: showStanding(budget),
    balances: budget === undefined ? [] : [showBalance('All work', budget.all), showBalance('Filmed work, recording sessions', budget.filmed)],
    owedElsewhere: elsewhere > 0 ? `${say(elsewhere)} of it is work of no episode, or of a later one, that this one waits for.` : null,
    relief: missing > 0 ? showRelief(input, episode, missing) : [],
    runtime,
    titles: series.titles,
    due,
    runtimeOffers: listRuntimeOffers(input, episode, own, runtime),
    segments: own.map((segment) => showSegment(input, segment, due)),
    results: own.filter((segment) => segment.isResult).length,
    otherEpisodes: document.episodes.filter((each) => each.id !== id).map(({ id: otherId, name }) => ({ id: otherId, name })),
    loose: segmentsOf(document, null).map((segment) => showSegment(input, segment, null)),
    warnings: listWarnings(document, own),
    shots: listShots(input, episode),
    shotWords: tellShots(input, episode),
    camera: tellCamera(input, episode, runtime.minutes),
    sponsors: showSponsors(input, episode),
  };
}

/** The page of an episode. */
export async function viewEpisode(context: ViewContext, document: EpisodesInput['document'], id: string): Promise<EpisodePageView | null> {
  const episode = document.episodes.find((each) => each.id === id);
  if (episode === undefined) return null;
  const [scene, facts] = await Promise.all([loadScene(context.storage, document.series.id), loadCheckedFacts(context, document)]);
  const view = computeEpisode({ document, plan: scene.plan, now: context.now }, id);
  return view === null ? null : { ...view, safety: summariseSafety(document, scene, episode), continuity: summariseContinuity(facts, episode) };
}

/** The progress view: on track, how sure, what threatens, what next. Pure. */
import { isDone, listWorks, type SeriesDocument } from '@/lib/build';
import { addDays, dateOf, formatDay, formatIsoWeek, formatMoment, formatWorkLength, isoWeekOf, mondayOf, startOfDay } from '@/lib/calendar';
import { earnedSchedule, estimateAtCompletion } from '@/lib/forecast';
import { taskMinutes, type PlanBlock, type PlanResult, type SavedPlan } from '@/lib/plan';
import { instant, MINUTES_PER_DAY, MS_PER_MINUTE, type Instant } from '@/lib/units';
import { recordedAt, showCalibration } from './calibration';
import { percent, savingOf, scaleOf, showDay, showForecast, tellWanted, tellWorth, type KeptForecast } from './progress-forecast';
import type { Answer, EarnedView, Mark, PartCounts, ProgressView, Timelines } from './progress-model';
import { isWait, linkRecord } from './week-block';
import { formatCount } from './week-words';

const MS_PER_WEEK = 7 * MINUTES_PER_DAY * MS_PER_MINUTE;

export interface ProgressInput {
  readonly document: SeriesDocument;
  readonly accepted: SavedPlan | null;
  /** The first plan that was ever accepted: what progress is measured against. */
  readonly baseline: SavedPlan | null;
  /** Plans that counted before, newest first. */
  readonly ghosts: readonly { readonly number: number; readonly finish: Instant; readonly madeAt: Instant }[];
  /** Newest first. */
  readonly forecasts: readonly KeptForecast[];
  /** A confidence in percent as somebody typed it; left out: none. */
  readonly sure?: string | null;
  readonly now: Instant;
}

const workBlocks = (result: PlanResult): PlanBlock[] => result.blocks.filter((block) => !isWait(block.kind));

function partCounts({ accepted, document, now }: ProgressInput): PartCounts {
  const running = (accepted?.result.blocks ?? []).filter((block) => isWait(block.kind) && block.start <= now && block.end > now);
  const nameOf = (id: string) => document.parts.find((part) => part.id === id)?.name ?? '';
  const names = (ids: readonly string[]) => [...new Set(ids)].map(nameOf).filter((name) => name !== '');
  const out = document.outsideJobs.filter((job) => job.droppedOffAt !== null && job.collectedAt === null).flatMap((job) => job.parts.map((use) => use.partId));
  const away = [...out, ...document.parts.filter((part) => part.whereabouts.kind === 'trade').map((part) => part.id)];
  const drying = running.filter((block) => block.kind === 'cure').flatMap((block) => block.partIds);
  const busy = new Set(listWorks(document).filter((work) => !isDone(work.record)).flatMap((work) => work.record.parts.map((use) => use.partId)));
  const done = document.parts.filter((part) => !busy.has(part.id)).map((part) => part.name);
  return { done, away: names(away), drying: names(drying), open: document.parts.length - done.length, total: document.parts.length };
}

const sayWork = (minutes: number): string => formatWorkLength(Math.round(minutes));

/** Crew work of the whole build, as typed and by experience. */
function tellCompletion(document: SeriesDocument): EarnedView['facts'] {
  const { isLearned, openLearned, openTyped, spent } = estimateAtCompletion(document);
  return [
    { name: 'At completion, as typed', value: sayWork(spent + openTyped) },
    { name: 'At completion, by experience', value: isLearned ? sayWork(spent + openLearned) : 'too little finished to learn from' },
  ];
}

/** Worked minutes of the first accepted plan by week, and how much of it is done. */
function earned({ baseline, document, now }: ProgressInput): EarnedView & { readonly index: number | null } {
  if (baseline === null) return { words: 'Progress in time is measured against the first accepted plan; there is none yet.', facts: [], index: null };
  const minutesOf = new Map(document.tasks.map((task) => [task.id, taskMinutes(document, task)]));
  const blocks = workBlocks(baseline.result).filter((block) => block.kind === 'task');
  const weeks = Math.max(1, Math.ceil((baseline.result.finish - baseline.madeAt) / MS_PER_WEEK));
  const planned = Array.from({ length: weeks }, (_, k) => {
    const end = baseline.madeAt + (k + 1) * MS_PER_WEEK;
    return blocks.filter((block) => block.end <= end || k === weeks - 1).reduce((sum, block) => sum + (minutesOf.get(block.subject.id) ?? 0), 0);
  });
  const isTaskDone = new Set(document.tasks.filter((task) => task.doneAt !== null).map((task) => task.id));
  const value = blocks.filter((block) => isTaskDone.has(block.subject.id)).reduce((sum, block) => sum + (minutesOf.get(block.subject.id) ?? 0), 0);
  const time = (now - baseline.madeAt) / MS_PER_WEEK;
  const found = earnedSchedule(planned, value, Math.max(time, 0));
  const total = planned.at(-1) ?? 0;
  const at = Math.min(weeks, Math.floor(time));
  const plannedNow = at <= 0 ? 0 : (planned[at - 1] ?? total);
  const facts = [
    { name: 'Planned by now', value: formatWorkLength(plannedNow) }, { name: 'Done', value: formatWorkLength(value) }, { name: 'Whole plan', value: formatWorkLength(total) },
    ...tellCompletion(document),
  ];
  if (!found.ok) return { words: found.error.map((one) => one.message).join(' '), facts, index: null };
  const { atCompletion, earned: weeksEarned, index } = found.value;
  const pace = `${weeksEarned.toFixed(1)} of ${weeks} planned weeks of work are done after ${time.toFixed(1)}.`;
  if (value === 0) {
    const isBehind = plannedNow > 0 && time >= 1;
    return { words: `Nothing of the first plan is done after ${time.toFixed(1)} of ${weeks} weeks${plannedNow === 0 ? ', and nothing was to be done by now.' : '.'}`, facts, index: isBehind ? 0 : null };
  }
  if (time < 1) return { words: `${pace} A pace is worth telling after the first week.`, facts, index: null };
  return {
    words: atCompletion === null ? pace : `${pace} At this pace the plan takes ${atCompletion.toFixed(1)} weeks.`,
    facts: [...facts, { name: 'Pace', value: `${index.toFixed(2)} planned weeks a week` }], index,
  };
}

/** Episodes that the newest forecast gives less than even odds; of how many. */
function unlikely({ document, forecasts }: ProgressInput): { readonly few: number; readonly all: number } {
  const open = new Set(document.episodes.filter((episode) => episode.status === 'planned').map((episode) => episode.id));
  const odds = (forecasts[0]?.result.episodes ?? []).filter((one) => open.has(one.episodeId));
  return { few: odds.filter((one) => one.chance < 0.5).length, all: odds.length };
}

function onTrack(input: ProgressInput, pace: number | null): Answer {
  const { accepted, now, document } = input;
  const question = 'On track?';
  if (accepted === null) return { question, answer: 'No plan yet', detail: 'Make a plan and accept it.', tone: 'plain', about: null };
  const { episodes, unplaced } = accepted.result;
  const planned = new Set(document.episodes.filter((episode) => episode.status === 'planned').map((episode) => episode.id));
  const trouble = episodes.filter((one) => planned.has(one.episodeId) && (one.late > 0 || one.recordedBy === null));
  const slipped = workBlocks(accepted.result).filter((block) => block.end < now && block.kind === 'task' && document.tasks.some((task) => task.id === block.subject.id && task.doneAt === null));
  const words = [
    trouble.length > 0 ? `${formatCount(trouble.length, 'episode')} late in the plan` : '',
    unplaced.length > 0 ? `${unplaced.length} without a place` : '',
    slipped.length > 0 ? `${formatCount(slipped.length, 'task')} should be done by now` : '',
  ].filter((word) => word !== '');
  const detail = pace === null ? `The plan ends ${formatMoment(accepted.result.finish, document.series.zone)}.` : `Pace ${pace.toFixed(2)} of the first plan; the plan ends ${formatMoment(accepted.result.finish, document.series.zone)}.`;
  const first = trouble[0];
  const about = first === undefined ? null : linkRecord('episode', first.episodeId, document.episodes);
  const { few, all } = unlikely(input);
  if (words.length === 0 && few > 0) {
    return { question, answer: `By the plan yes, by the odds ${few} of ${formatCount(all, 'episode')} ${few === 1 ? 'is' : 'are'} more likely late than not`, detail, tone: 2 * few > all ? 'stop' : 'warn', about };
  }
  if (words.length === 0) return { question, answer: pace !== null && pace < 0.9 ? 'Behind the first plan' : 'Yes, by the plan', detail, tone: pace !== null && pace < 0.9 ? 'warn' : 'good', about };
  return { question, answer: `${words.join(', ')}`, detail, tone: trouble.length > 0 || unplaced.length > 0 ? 'stop' : 'warn', about };
}

function howSure(forecast: KeptForecast | null, { document, now }: ProgressInput): Answer {
  const question = 'How sure?';
  if (forecast === null) return { question, answer: 'Not known yet', detail: 'Run a forecast to get odds.', tone: 'plain', about: null };
  const { result } = forecast;
  const next = result.episodes.find((one) => one.shootDue > now) ?? result.episodes[0];
  const eighty = showDay(result.finish.percentiles[79] ?? null, now, document.series.zone);
  const ends = eighty.startsWith('later') ? 'The build ends, with 80 %, later than all sessions assumed.' : `The build is done by ${eighty} with 80 %.`;
  if (next === undefined) return { question, answer: ends, detail: '', tone: 'plain', about: null };
  const about = linkRecord('episode', next.episodeId, document.episodes);
  return { question, answer: `${percent(next.chance)} for ${about.name}`, detail: ends, tone: next.chance >= 0.8 ? 'good' : next.chance >= 0.5 ? 'warn' : 'stop', about };
}

function threat(forecast: KeptForecast | null, { document }: ProgressInput): Answer {
  const question = 'What threatens it most?';
  const risky = forecast?.result.threats.toSorted((a, b) => (b.worth ?? 0) - (a.worth ?? 0) || b.share - a.share)[0];
  if (risky === undefined) return { question, answer: 'Not known yet', detail: 'A forecast counts what holds the end up.', tone: 'plain', about: null };
  const about = linkRecord(risky.subject.kind, risky.subject.id, risky.subject.kind === 'task' ? document.tasks : document.outsideJobs);
  return { question, answer: about.name, detail: `It held the finish up in ${percent(risky.share)} of the runs. ${tellWorth(risky.worth, savingOf(risky.subject.kind))}`.trim(), tone: risky.share > 0.5 ? 'warn' : 'plain', about };
}

function whatNext({ accepted, document, now }: ProgressInput): Answer {
  const question = 'What next?';
  const open = new Set(listWorks(document).filter((work) => !isDone(work.record)).map((work) => work.record.id));
  const next = accepted === null ? undefined : workBlocks(accepted.result).filter((block) => open.has(block.subject.id) && block.end > now)[0];
  if (next === undefined) return { question, answer: listWorks(document).length === 0 ? 'Add the first task' : open.size === 0 ? 'Everything is done' : 'Make a plan', detail: '', tone: 'plain', about: null };
  return {
    question, answer: next.title, detail: formatMoment(next.start, document.series.zone), tone: 'plain',
    about: linkRecord(next.subject.kind, next.subject.id, next.subject.kind === 'task' ? document.tasks : document.outsideJobs),
  };
}

const MOST_TICKS = 10;

function timelines(input: ProgressInput, forecast: KeptForecast | null): Timelines | null {
  const { accepted, document, ghosts, now } = input;
  if (accepted === null) return null;
  const { zone } = document.series;
  const releases = document.episodes.map((episode) => ({ episode, at: startOfDay(episode.releaseDate, zone) }));
  const [p10, p50, p80] = [9, 49, 79].map((k) => forecast?.result.finish.percentiles[k] ?? null);
  const moments = [accepted.result.finish, now, ...releases.map(({ at }) => at), ...ghosts.map(({ finish }) => finish), ...[p10, p50, p80].filter((at): at is Instant => at !== null && at !== undefined)];
  const first = Math.min(...moments, input.baseline?.madeAt ?? accepted.madeAt);
  const last = Math.max(...moments) + MS_PER_WEEK / 7;
  const scale = scaleOf(first, last);
  const mark = (kind: Mark['kind'], key: string, word: string, at: Instant, tone: Mark['tone'] = 'plain'): Mark => ({ key, kind, word, at: scale(at), when: showDay(at, now, zone), tone });
  const weeks = Math.ceil((last - first) / MS_PER_WEEK);
  const step = Math.max(1, Math.ceil(weeks / MOST_TICKS));
  const monday = mondayOf(isoWeekOf(dateOf(instant(first), zone)));
  const outlooks = new Map(accepted.result.episodes.map((one) => [one.episodeId, one]));
  return {
    ticks: Array.from({ length: Math.floor(weeks / step) + 1 }, (_, k) => addDays(monday, 7 * step * (k + 1)))
      .map((day) => ({ at: (startOfDay(day, zone) - first) / (last - first), label: formatDay(day).replace(/^\w+ /, '') })).filter((tick) => tick.at > 0 && tick.at < 1),
    now: scale(now),
    span: p10 !== null && p10 !== undefined && p80 !== null && p80 !== undefined ? { from: scale(p10), to: scale(p80) } : null,
    build: [
      ...ghosts.map((ghost) => mark('ghost', `ghost ${ghost.number}`, `Plan ${ghost.number} ended`, ghost.finish)),
      mark('plan', 'plan', `Plan ${accepted.number} ends`, accepted.result.finish),
      ...(p50 ? [mark('likely', 'p50', 'Done with 50 %', p50)] : []),
      ...(p80 ? [mark('sure', 'p80', 'Done with 80 %', p80)] : []),
    ],
    series: releases.flatMap(({ at, episode }) => {
      const outlook = outlooks.get(episode.id);
      const recorded = recordedAt(document, episode.id) ?? outlook?.recordedBy ?? null;
      const tone = episode.status !== 'planned' || (recorded !== null && (outlook?.late ?? 0) === 0) ? 'good' : 'stop';
      return [mark('release', `release ${episode.id}`, `Release of ${episode.name}`, at, tone), ...(recorded === null ? [] : [mark('recorded', `recorded ${episode.id}`, `${episode.name} recorded`, recorded, tone)])];
    }),
  };
}

function review({ accepted, document, now }: ProgressInput): ProgressView['review'] {
  const { zone } = document.series;
  const monday = startOfDay(mondayOf(isoWeekOf(dateOf(now, zone))), zone);
  const done = listWorks(document).flatMap(({ record }) => {
    const at = record.kind === 'task' ? record.doneAt : record.collectedAt;
    return at !== null && at >= instant(monday - MS_PER_WEEK) ? [`${record.name}, ${formatMoment(at, zone)}`] : [];
  });
  const open = new Set(listWorks(document).filter((work) => !isDone(work.record)).map((work) => work.record.id));
  const blocks = accepted === null ? [] : workBlocks(accepted.result).filter((block) => open.has(block.subject.id));
  return {
    done,
    next: blocks.filter((block) => block.end > now && block.start < monday + 2 * MS_PER_WEEK).map((block) => `${block.title}, ${formatMoment(block.start, zone)}`),
    late: blocks.filter((block) => block.end <= now).map((block) => `${block.title}, planned for ${formatMoment(block.start, zone)}`),
  };
}

/** Everything that the progress pages show. */
export function computeProgress(input: ProgressInput): ProgressView {
  const { accepted, document, forecasts, ghosts, now } = input;
  const { zone } = document.series;
  const latest = forecasts[0] ?? null;
  const { index, ...earnedView } = earned(input);
  return {
    seriesId: document.series.id, seriesName: document.series.name, week: formatIsoWeek(isoWeekOf(dateOf(now, zone))), today: formatDay(dateOf(now, zone)),
    hasWork: document.tasks.length > 0, planNumber: accepted?.number ?? null,
    answers: [onTrack(input, index), howSure(latest, input), threat(latest, input), whatNext(input)],
    timelines: timelines(input, latest), parts: partCounts(input), earned: earnedView,
    forecast: latest === null ? null : showForecast(latest, document, now, accepted?.number ?? null),
    wanted: latest === null ? null : tellWanted(latest, input.sure ?? null, now, zone),
    calibration: showCalibration(forecasts, document, now),
    ghosts: ghosts.map((ghost) => ({ number: ghost.number, finish: formatMoment(ghost.finish, zone), made: formatMoment(ghost.madeAt, zone) })),
    review: review(input),
  };
}

/** The plans view: the draft against the accepted plan, and every plan there was. Pure. */
import { DEFAULT_WORKSHOP, GOAL_NAMES, goalsOf, isDone, listWorks, type PlanGoal, type SeriesDocument } from '@/lib/build';
import { dateOf, formatIsoWeek, formatLength, formatMoment, isoWeekOf } from '@/lib/calendar';
import { diffPlans, openPlan, type EpisodeChange, type EpisodeOutlook, type PlanChange, type PlanResult, type SavedPlan } from '@/lib/plan';
import type { PlanSummary } from '@/lib/storage';
import { minutesBetween, type Instant } from '@/lib/units';
import { tellEffect } from './estimates';
import type { DraftView, EpisodeLine, LoosePin, PlanFacts, PlanRow, PlansView } from './plans-model';
import { isWait, linkRecord, showReasons } from './week-block';
import { stampPlan } from './week-plan';
import { capitalise, formatCount } from './week-words';

const CHANGE_WORDS: Readonly<Record<PlanChange['kind'], string>> = {
  added: 'New', removed: 'Gone', earlier: 'Earlier', later: 'Later', crew: 'Other people', place: 'Other place',
};

const STATUS_WORDS: Readonly<Record<SavedPlan['status'], string>> = {
  draft: 'Draft', accepted: 'Accepted', superseded: 'Replaced', discarded: 'Discarded',
};

export interface PlansInput {
  readonly document: SeriesDocument;
  readonly accepted: SavedPlan | null;
  readonly draft: SavedPlan | null;
  /** Every plan of the series, newest first. */
  readonly plans: readonly PlanSummary[];
  readonly now: Instant;
}

function describeLate(result: PlanResult): { late: string; isLate: boolean } {
  const late = result.episodes.filter((episode) => episode.late > 0);
  const open = result.episodes.filter((episode) => episode.recordedBy === null).length;
  const sum = late.reduce((total, episode) => total + episode.late, 0);
  const words = [
    late.length > 0 ? `${formatCount(late.length, 'episode')} late, ${formatLength(sum)} together` : '',
    open > 0 ? `${formatCount(open, 'episode')} without a full recording` : '',
  ].filter((word) => word !== '');
  return { late: words.join('; ') || 'no episode late', isLate: words.length > 0 };
}

function describeProof(result: PlanResult, zone: string): string {
  if (result.status === 'optimal') return 'No better plan of this work exists.';
  if (result.finish <= result.earliestFinish) return 'It ends as early as this work can end.';
  return `It ends ${formatLength(minutesBetween(result.earliestFinish, result.finish))} after the earliest end that is not ruled out (${formatMoment(result.earliestFinish, zone)}).`;
}

function describeGoals({ goals }: PlanResult, { series }: SeriesDocument): Pick<PlanFacts, 'bank' | 'heating'> {
  if (goals === undefined) return { bank: null, heating: null };
  const wanted = formatCount(series.bankMinimum, 'finished episode');
  return {
    bank: goals.bankWeeks === 0 ? `no week below ${wanted}, of those a plan can change` : `${formatCount(goals.bankWeeks, 'week')} below ${wanted}`,
    heating: goals.heating === null ? null : `${(series.workshop ?? DEFAULT_WORKSHOP).currency} ${goals.heating.toFixed(2)} in the sessions it uses`,
  };
}

/** What each goal counts. */
const GOAL_WORDS: Readonly<Record<PlanGoal, string>> = {
  lateness: 'hours that episodes are recorded after they are due, dated ones five times',
  bank: 'weeks that end with too few finished episodes',
  changes: 'blocks that move, or go to other people, against the accepted plan',
  finish: 'the end of the build',
  heating: 'the cost of heated sessions that are used; cures still count on the heat as entered',
};

function describeFrozen(days: number): string {
  return days === 0 ? 'Days that stay as planned: none; a new plan may move anything that has not begun.' : `Days that stay as planned: work that starts within ${formatCount(days, 'day')} stays where the accepted plan has it.`;
}

function describePlan(plan: SavedPlan, document: SeriesDocument): PlanFacts {
  const { result } = plan;
  const { zone } = document.series;
  return {
    number: plan.number,
    madeAt: formatMoment(plan.madeAt, zone),
    work: formatCount(result.blocks.filter((block) => !isWait(block.kind)).length, 'block of work', 'blocks of work'),
    unplaced: result.unplaced.length,
    ...describeLate(result),
    finish: formatMoment(result.finish, zone),
    ...describeGoals(result, document),
    proof: describeProof(result, zone),
    search: `${formatCount(result.schedulesTried, 'schedule')} tried in ${(result.solveTime / 1000).toFixed(1)} s, seed ${result.seed}`,
  };
}

function describeShift(change: EpisodeChange, hasBefore: boolean, zone: string): Pick<EpisodeLine, 'kind' | 'text'> {
  const { before, after, shift } = change;
  if (after === null) return before === null ? { kind: 'same', text: 'some of its work has no place' } : { kind: 'worse', text: `was recorded ${formatMoment(before, zone)}, now some of its work has no place` };
  if (before === null) return { kind: hasBefore ? 'better' : 'first', text: `recorded ${formatMoment(after, zone)}${hasBefore ? ', before it had no date' : ''}` };
  if (shift === null || shift === 0) return { kind: 'same', text: `recorded ${formatMoment(after, zone)}, as before` };
  return { kind: shift < 0 ? 'better' : 'worse', text: `recorded ${formatMoment(after, zone)}, ${formatLength(Math.abs(shift))} ${shift < 0 ? 'earlier' : 'later'}` };
}

function describeSpare(outlook: EpisodeOutlook | undefined): Pick<EpisodeLine, 'outlook' | 'isLate'> {
  if (!outlook || outlook.recordedBy === null) return { outlook: 'no date', isLate: true };
  if (outlook.late > 0) return { outlook: `${formatLength(outlook.late)} late`, isLate: true };
  return { outlook: `${formatLength(minutesBetween(outlook.recordedBy, outlook.shootDue))} to spare`, isLate: false };
}

function showDraft(draft: SavedPlan, accepted: SavedPlan | null, document: SeriesDocument): DraftView {
  const { zone } = document.series;
  const diff = diffPlans(accepted === null ? null : openPlan(document, accepted.result), draft.result, zone);
  const listOf = (kind: 'task' | 'outsideJob') => (kind === 'task' ? document.tasks : document.outsideJobs);
  return {
    ...describePlan(draft, document),
    summary: diff.summary,
    changes: accepted === null ? [] : diff.changes.map((change) => ({
      key: change.blockId, title: change.title, kind: change.kind, kindWord: CHANGE_WORDS[change.kind], text: change.text,
    })),
    episodes: diff.episodes.map((change) => ({
      episode: linkRecord('episode', change.episodeId, document.episodes),
      ...describeShift(change, accepted !== null, zone),
      ...describeSpare(draft.result.episodes.find((one) => one.episodeId === change.episodeId)),
    })),
    without: draft.result.unplaced.map((work) => ({
      subject: linkRecord(work.subject.kind, work.subject.id, listOf(work.subject.kind)),
      title: work.title, when: null, reasons: showReasons(work.because, zone),
    })),
    staleness: stampPlan(draft, document, null)?.staleness ?? null,
  };
}

/** `by Marta: the plater is late` */
function tellAcceptance({ acceptedBy, acceptedWhy }: PlanSummary): string | null {
  if (acceptedBy === undefined) return acceptedWhy === undefined ? null : `because: ${acceptedWhy}`;
  return acceptedWhy === undefined ? `by ${acceptedBy}` : `by ${acceptedBy}: ${acceptedWhy}`;
}

function showRow(plan: PlanSummary, zone: string): PlanRow {
  return {
    number: plan.number,
    status: plan.status,
    statusWord: STATUS_WORDS[plan.status],
    madeAt: formatMoment(plan.madeAt, zone),
    acceptedAt: plan.acceptedAt === null ? null : formatMoment(plan.acceptedAt, zone),
    acceptedWords: tellAcceptance(plan),
    size: formatCount(plan.blockCount, 'block'),
    unplaced: plan.unplacedCount,
    finish: formatMoment(plan.finish, zone),
    basedOnChange: plan.basedOnChange,
  };
}

function listLoosePins(document: SeriesDocument, accepted: SavedPlan | null): LoosePin[] {
  if (accepted === null) return [];
  const starts = new Map(accepted.result.blocks.flatMap((block) => (block.kind === 'task' ? [[block.subject.id, block.start] as const] : [])));
  return document.tasks.flatMap(({ doneAt, id, name, pinnedStart, revision }) => (doneAt === null && pinnedStart !== null && starts.get(id) !== pinnedStart
    ? [{ taskId: id, revision, name, when: formatMoment(pinnedStart, document.series.zone) }] : []));
}

/** Everything the plans page shows. */
export function computePlans({ document, accepted, draft, plans, now }: PlansInput): PlansView {
  const { zone } = document.series;
  const stamp = stampPlan(accepted, document, draft?.number ?? null);
  return {
    seriesId: document.series.id,
    seriesName: document.series.name,
    currentWeek: formatIsoWeek(isoWeekOf(dateOf(now, zone))),
    accepted: accepted === null || stamp === null ? null : { ...describePlan(accepted, document), stamp },
    draft: draft === null ? null : showDraft(draft, accepted, document),
    history: plans.map((plan) => showRow(plan, zone)),
    loosePins: listLoosePins(document, accepted),
    people: document.people.map(({ name }) => name),
    experience: tellEffect(document),
    goals: goalsOf(document.series).map((goal) => ({ goal, name: GOAL_NAMES[goal], label: capitalise(GOAL_NAMES[goal]), text: GOAL_WORDS[goal] })),
    seriesRevision: document.series.revision,
    frozen: describeFrozen(document.series.frozenDays),
    openWork: listWorks(document).filter((work) => !isDone(work.record)).length,
    sessionsAhead: document.sessions.filter((session) => session.end > now).length,
  };
}

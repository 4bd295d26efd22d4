/** Raises the engine's answer back to trade words. */
import { goalsOf, shootDue } from '@/lib/build';
import { dateOf } from '@/lib/calendar';
import { explainPlacement, type Fact, type Placement, type Schedule, type Solution, type Unplaced } from '@/lib/scheduling';
import { instant, minutesBetween, minutes } from '@/lib/units';
import type { Compiled } from '../compile/compile';
import { episodeActivity, isWorkshopWork, readName } from '../compile/names';
import { factWords } from '../explain/fact-words';
import { heaterBecause } from '../explain/heater-words';
import { activityTitle, joinTitles } from '../explain/titles';
import { lateWords } from '../explain/window-words';
import type { Because, EpisodeOutlook, PlanBlock, PlanResult, UnplacedWork } from '../model';
import { waitBlocks, workBlock } from './blocks';

/** Reasons shown for a block; more would not be read. */
const MOST_REASONS = 3;

function blockerOf(compiled: Compiled, fact: Fact): string | null {
  if (fact.kind === 'lag-min' || fact.kind === 'lag-max') return compiled.draft.lags.find((lag) => lag.id === fact.lag)?.from.activity ?? null;
  return 'blockers' in fact ? (fact.blockers[0] ?? null) : null;
}

function becauseOf(compiled: Compiled, fact: Fact, until: number | null): Because {
  const moment = until === null ? null : compiled.draft.clock.moment(until);
  const words = factWords(compiled, fact, moment);
  return { ...words, until: moment, blockId: blockerOf(compiled, fact) };
}

function reasonsFor(compiled: Compiled, schedule: Schedule, placement: Placement, placements: ReadonlyMap<string, Placement>): Because[] {
  const facts = explainPlacement(compiled.problem, schedule, placement.activity);
  const kindOf = (fact: Fact) => (fact.kind === 'budget' ? compiled.draft.budgetReasons.get(fact.budget)?.kind : undefined);
  // One full session, or one day's limit, tells it; the rest of them would only repeat it.
  const reasons = facts
    .filter(({ fact }, index) => fact.kind !== 'budget' || index === facts.findIndex((other) => kindOf(other.fact) === kindOf(fact)))
    .map((reason) => becauseOf(compiled, reason.fact, reason.until));
  const first = lateBecause(compiled, placement.activity) ?? heaterBecause(compiled, placements, placement);
  return dropRepeats(first === null ? reasons : [first, ...reasons]).slice(0, MOST_REASONS);
}

/** Why work that no record asks for is in the plan. */
function lateBecause({ draft }: Compiled, activity: string): Because | null {
  const { kind, id } = readName(activity);
  const late = kind === 'late-work' ? draft.lateWork.get(id) : undefined;
  return late === undefined ? null : { ...lateWords(draft, late), until: null, blockId: null };
}

function dropRepeats(reasons: readonly Because[]): Because[] {
  return reasons.filter((reason, index) => reasons.findIndex((other) => other.text === reason.text) === index);
}

function unplacedWork(compiled: Compiled, unplaced: Unplaced): UnplacedWork | null {
  const { draft } = compiled;
  const { kind, id } = readName(unplaced.activity);
  if (kind === 'episode') return null;
  const own = unplaced.because.map((fact) => becauseOf(compiled, fact, null));
  const impossible = draft.impossible.get(unplaced.activity);
  const added = lateBecause(compiled, unplaced.activity);
  const because: Because[] = [...(added === null ? [] : [added]), ...(impossible ? [{ ...impossible, until: null, blockId: null }] : own)];
  if (unplaced.waitsFor.length > 0 && !impossible) {
    because.unshift({ text: `Waits for ${joinTitles(draft, unplaced.waitsFor)}, which ${unplaced.waitsFor.length === 1 ? 'has' : 'have'} no place either.`, until: null, change: null, blockId: unplaced.waitsFor[0]! });
  }
  const isTask = isWorkshopWork(kind);
  return {
    subject: { kind: isTask ? 'task' : 'outsideJob', id },
    title: activityTitle(draft, unplaced.activity),
    because: dropRepeats(because).slice(0, MOST_REASONS),
  };
}

/** When each planned episode's recording is complete, against its shoot due date. */
function episodeOutlooks(compiled: Compiled, schedule: Schedule): EpisodeOutlook[] {
  const { document, clock, now } = compiled.draft;
  const placed = new Map(schedule.placements.map((placement) => [placement.activity, placement]));
  return document.episodes
    .filter((episode) => episode.status === 'planned')
    .map((episode) => {
      const due = shootDue(document.series, episode);
      const milestone = placed.get(episodeActivity(episode.id));
      const isPlanned = compiled.problem.activities.some((activity) => activity.id === episodeActivity(episode.id));
      const recordedBy = milestone ? clock.moment(milestone.end) : isPlanned ? null : lastDone(compiled, episode.id);
      const late = recordedBy === null ? 0 : Math.max(0, minutesBetween(due, recordedBy));
      return { episodeId: episode.id, shootDue: due, recordedBy: recordedBy ?? (isPlanned ? null : now), late: minutes(late) };
    });
}

function lastDone(compiled: Compiled, episodeId: string) {
  const { tasks } = compiled.draft.document;
  const ends = tasks.filter((task) => task.episodeId === episodeId).map((task) => task.doneAt ?? 0);
  return ends.length === 0 ? null : instant(Math.max(...ends));
}

/** Measured and chosen by the caller. */
export interface SolveFacts {
  /** Milliseconds of solving. */
  readonly solveTime: number;
  /** True: dates only, no reasons. For answers that nobody reads block by block. */
  readonly isBare?: boolean;
}

/** The dated plan in trade words. @throws Error when the engine names something the compiler did not give it (a bug). */
export function raisePlan(compiled: Compiled, solution: Extract<Solution, { schedule: Schedule }>, facts: SolveFacts): PlanResult {
  const { draft } = compiled;
  const { schedule } = solution;
  const placements = new Map(schedule.placements.map((placement) => [placement.activity, placement]));
  const work = schedule.placements
    .map((placement) => workBlock(compiled, placement, facts.isBare === true || readName(placement.activity).kind === 'episode' ? [] : reasonsFor(compiled, schedule, placement, placements)))
    .filter((block): block is PlanBlock => block !== null);
  const finish = work.reduce((latest, block) => Math.max(latest, block.end), draft.now as number);
  return {
    blocks: [...work, ...waitBlocks(compiled, placements)].toSorted((a, b) => a.start - b.start || a.id.localeCompare(b.id, 'en')),
    unplaced: schedule.unplaced.map((unplaced) => unplacedWork(compiled, unplaced)).filter((unplaced): unplaced is UnplacedWork => unplaced !== null),
    episodes: episodeOutlooks(compiled, schedule),
    goals: {
      order: goalsOf(draft.document.series), bankWeeks: schedule.score.shortages, changes: schedule.score.moved,
      heating: compiled.problem.upkeep === undefined ? null : schedule.score.cost,
    },
    status: solution.status,
    finish: instant(finish),
    earliestFinish: draft.clock.moment(solution.lowerBound),
    schedulesTried: solution.schedulesTried,
    seed: solution.seed,
    solveTime: facts.solveTime,
    from: dateOf(draft.now, draft.document.series.zone),
    to: dateOf(draft.clock.moment(draft.horizon - 1), draft.document.series.zone),
  };
}

/** Workshop time an episode still needs, against what its sessions offer before its recording is due. */
import { formatWorkLength } from '@/lib/calendar';
import { p80Of } from '@/lib/estimate';
import { instant, minutesBetween, type Instant } from '@/lib/units';
import type { SharedSpread } from './task-time';

/** Unfinished work of an episode. */
export interface BudgetTask {
  readonly id: string;
  readonly name: string;
  readonly episodeId: string;
  /** Session time, minutes. */
  readonly mean: number;
  /** Its own spread, independent of other tasks. */
  readonly deviation: number;
  /** Spreads that all work under the same key shares. */
  readonly shared: readonly SharedSpread[];
  /** People it takes. */
  readonly crew: number;
  /** It needs a recording session. */
  readonly isFilmed: boolean;
}

export interface BudgetSession {
  readonly start: Instant;
  readonly end: Instant;
  readonly people: number;
  readonly isRecording: boolean;
}

export interface BudgetEpisode {
  readonly id: string;
  readonly name: string;
  /** When its recording must be complete. */
  readonly due: Instant;
}

export interface BudgetProblem {
  readonly now: Instant;
  readonly episodes: readonly BudgetEpisode[];
  readonly tasks: readonly BudgetTask[];
  readonly sessions: readonly BudgetSession[];
  /** Largest share of a session's hours that is booked. */
  readonly fillLimit: number;
}

export type Verdict = 'fits' | 'tight' | 'short' | 'done';

/** Person-minutes; one person's hour is 60 of them. */
export interface Balance {
  readonly need: { readonly mean: number; readonly p80: number };
  /** In sessions from now to the due date, up to the fill limit. */
  readonly available: number;
  /** What episodes due no later take of it, on average. */
  readonly takenEarlier: number;
  /** Left after all of it on average; negative: missing. */
  readonly left: number;
  /** Left when eight of ten cases are to fit; negative: missing. */
  readonly leftAtP80: number;
  readonly sessions: number;
}

export interface EpisodeBudget {
  readonly episodeId: string;
  readonly due: Instant;
  readonly all: Balance;
  /** The same for filmed work and recording sessions alone. */
  readonly filmed: Balance;
  readonly verdict: Verdict;
  /** A sentence with the numbers. */
  readonly words: string;
}

interface Load {
  readonly mean: number;
  readonly variance: number;
}

/** Own spreads are independent; under one key they are wrong together, so they add up before they are squared. */
function loadOf(tasks: readonly BudgetTask[]): Load {
  const together = new Map<string, number>();
  let [mean, variance] = [0, 0];
  for (const task of tasks) {
    mean += task.crew * task.mean;
    variance += (task.crew * task.deviation) ** 2;
    for (const { key, deviation } of task.shared) together.set(key, (together.get(key) ?? 0) + task.crew * deviation);
  }
  return { mean, variance: variance + [...together.values()].reduce((sum, deviation) => sum + deviation ** 2, 0) };
}

/** Person-minutes of a session between two moments. */
function offered(session: BudgetSession, from: Instant, to: Instant): number {
  const [start, end] = [Math.max(session.start, from), Math.min(session.end, to)];
  return start < end ? minutesBetween(instant(start), instant(end)) * session.people : 0;
}

function balance(problem: BudgetProblem, due: Instant, own: readonly BudgetTask[], earlier: readonly BudgetTask[], isOffered: (session: BudgetSession) => boolean): Balance {
  const offers = problem.sessions.filter(isOffered).map((session) => offered(session, problem.now, due)).filter((offer) => offer > 0);
  const available = offers.reduce((sum, offer) => sum + offer, 0) * problem.fillLimit;
  const [mine, before, both] = [loadOf(own), loadOf(earlier), loadOf([...own, ...earlier])];
  return {
    need: { mean: mine.mean, p80: p80Of(mine.mean, Math.sqrt(mine.variance)) },
    available,
    takenEarlier: before.mean,
    left: available - both.mean,
    leftAtP80: available - p80Of(both.mean, Math.sqrt(both.variance)),
    sessions: offers.length,
  };
}

function judge(balances: readonly Balance[]): Verdict {
  const needed = balances.filter((each) => each.need.mean > 0);
  if (needed.length === 0) return 'done';
  if (needed.some((each) => each.left < 0)) return 'short';
  return needed.some((each) => each.leftAtP80 < 0) ? 'tight' : 'fits';
}

const say = (length: number): string => formatWorkLength(Math.round(Math.abs(length)));

function tell(verdict: Verdict, all: Balance, filmed: Balance): string {
  if (verdict === 'done') return 'No workshop time is needed any more.';
  const isFilming = filmed.need.mean > 0 && (filmed.left < all.left || filmed.leftAtP80 < all.leftAtP80) && judge([filmed]) === verdict;
  const [tight, what] = isFilming ? [filmed, 'in recording sessions'] : [all, 'in sessions'];
  const base = `It needs ${say(tight.need.mean)} of the crew's time, ${say(tight.need.p80)} at P80; ${say(Math.max(0, tight.available - tight.takenEarlier))} are free ${what} before recording is due`;
  if (verdict === 'short') return `${base}: ${say(tight.left)} are missing.`;
  if (verdict === 'tight') return `${base}: enough on average, ${say(tight.leftAtP80)} too little for eight of ten cases.`;
  return `${base}: ${say(tight.leftAtP80)} are left at P80.`;
}

const isFilmed = (task: BudgetTask): boolean => task.isFilmed;

/**
 * A budget for each episode, in the order they are due. Episodes due earlier are served first, so what they need is taken from the
 * sessions before a later one counts: an episode can be short of time because of another. Own spreads are added as independent.
 */
export function budgetEpisodes(problem: BudgetProblem): readonly EpisodeBudget[] {
  const inOrder = problem.episodes.toSorted((a, b) => a.due - b.due);
  return inOrder.map(({ id, due }, index) => {
    const before = new Set(inOrder.slice(0, index).map((episode) => episode.id));
    const own = problem.tasks.filter((task) => task.episodeId === id);
    const earlier = problem.tasks.filter((task) => before.has(task.episodeId));
    const all = balance(problem, due, own, earlier, () => true);
    const filmed = balance(problem, due, own.filter(isFilmed), earlier.filter(isFilmed), (session) => session.isRecording);
    const verdict = judge([all, filmed]);
    return { episodeId: id, due, all, filmed, verdict, words: tell(verdict, all, filmed) };
  });
}

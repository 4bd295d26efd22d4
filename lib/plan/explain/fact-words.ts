/** Facts of the engine in trade words. */
import { formatDay, formatMoment } from '@/lib/calendar';
import type { Fact, Lag } from '@/lib/scheduling';
import { asksForSecond, NOISE_LIMIT, VIBRATION_LIMIT_POINTS } from '@/lib/safety';
import type { Instant } from '@/lib/units';
import type { Compiled } from '../compile/compile';
import type { Draft } from '../compile/draft';
import { expectedReady } from '../compile/job-activities';
import { readName } from '../compile/names';
import { demandWords, taskCalendar } from '../compile/session-calendars';
import { SHORTEST_PIECE, taskMinutes } from '../compile/task-activities';
import { pinnedInHeat } from './heater-words';
import { lagWords, type Words } from './lag-words';
import { windowWords } from './window-words';
import { activityTitle, joinTitles, poolNames, resourceTitle } from './titles';

const at = (draft: Draft, moment: Instant | null): string => (moment === null ? 'later' : formatMoment(moment, draft.document.series.zone));

/** What the sessions of a task must offer: `recording, at the bench`. */
function sessionWords(draft: Draft, activity: string): string {
  const { id } = readName(activity);
  const task = draft.tasks.get(id);
  return task ? `in a session ${demandWords(draft, task)}` : 'while the trade is open and somebody can go';
}

function resourceWords(draft: Draft, fact: Extract<Fact, { kind: 'resource' }>, until: Instant | null): Words {
  const { kind, name } = resourceTitle(draft, fact.resource);
  const by = fact.blockers.length > 0 ? ` with ${joinTitles(draft, fact.blockers)}` : '';
  if (kind === 'part') return { text: `${name} is in work until ${at(draft, until)}${by}.`, change: null };
  if (kind === 'place') return { text: `${name} is full until ${at(draft, until)}${by}.`, change: `Do one of them somewhere else, or raise the capacity of ${name} if it has room.` };
  if (kind === 'equipment') return { text: `${name} is in use until ${at(draft, until)}${by}.`, change: `Borrow another ${name}.` };
  return { text: `${name} is busy until ${at(draft, until)}${by}.`, change: 'Let somebody else with the skill do one of them.' };
}

/** Why the plan gives a task somebody more than it asks for. */
function neverAlone(draft: Draft, activity: string): string {
  const task = draft.tasks.get(readName(activity).id);
  const hazard = task === undefined || readName(activity).kind !== 'task' ? null : asksForSecond(draft.document, task);
  return hazard === null ? '' : `Never with one person, because of ${hazard.name.toLowerCase()}: two are needed. `;
}

function crewWords(draft: Draft, fact: Extract<Fact, { kind: 'crew' }>, until: Instant | null): Words {
  if (fact.pool.length === 0) return { text: 'Nobody has the skill.', change: 'Give the skill to a person.' };
  const who = fact.pool.length === draft.document.people.length && fact.pool.length > 1 ? 'anybody' : poolNames(draft, fact.pool, 'or');
  if (fact.blockers.length === 0) return { text: `${neverAlone(draft, fact.activity)}No fitting session before ${at(draft, until)} has ${who} with enough time left.`, change: `Bring ${who === 'anybody' ? 'somebody' : who} into an earlier session.` };
  const busy = who === 'anybody' ? 'Everybody who is there is' : `${poolNames(draft, fact.pool, 'and')} ${fact.pool.length === 1 ? 'is' : 'are'}`;
  return { text: `${neverAlone(draft, fact.activity)}${busy} busy until ${at(draft, until)} with ${joinTitles(draft, fact.blockers)}.`, change: 'Bring one more person into that session, or do one of them another day.' };
}

function stateFactWords(draft: Draft, fact: Extract<Fact, { kind: 'state' }>, until: Instant | null): Words {
  const { kind, id } = readName(fact.medium);
  const by = joinTitles(draft, fact.blockers);
  if (kind === 'surface') return { text: `${draft.parts.get(id)?.name ?? id} is wet from ${by} and touch dry ${at(draft, until)}.`, change: 'Lay the coat after this work, if the order of the work allows it.' };
  if (kind === 'sound') return { text: `Speech and noise do not go together: ${by} until ${at(draft, until)}.`, change: 'Put the talking before the noise, or in a session of its own.' };
  if (kind === 'breath') return { text: `Nobody may breathe the air of ${id} before the isocyanate from ${by} has cleared: the next time for it is ${at(draft, until)}.`, change: 'Send the spraying to a booth outside, or plan the other work elsewhere.' };
  if (kind === 'fire') return { text: `Solvent vapour and sparks or flames never share the air of ${id}: ${by} until ${at(draft, until)}.`, change: 'Do one of them where the air is another, or on another day.' };
  return { text: `The air of ${id} is taken by ${by} until ${at(draft, until)}: dust must settle and wet paint must be touch dry first.`, change: 'Do the dusty work in another air zone.' };
}

function releaseWords(compiled: Compiled, activity: string, until: Instant | null): Words {
  const { draft, runningWaits } = compiled;
  const wait = runningWaits.get(activity);
  if (wait) return lagWords(draft, wait.reason, activity, until ?? draft.clock.moment(wait.minute));
  const { kind, id } = readName(activity);
  const job = kind === 'collection' ? draft.jobs.get(id) : undefined;
  if (!job || job.droppedOffAt === null) return { text: `First time from now on that is ${sessionWords(draft, activity)}.`, change: null };
  const trade = draft.trades.get(job.tradeId)?.name ?? 'the trade';
  const ready = expectedReady(draft, job);
  const text = job.promisedFor === null ? `At ${trade}, back from ${at(draft, ready)} by its quote.` : `At ${trade}, promised for ${at(draft, ready)}.`;
  return { text, change: `Ask ${trade} for an earlier day.` };
}

function calendarWords({ draft, problem }: Compiled, activity: string, until: Instant | null): Words {
  const heat = pinnedInHeat(draft, problem.activities.find(({ id }) => id === activity));
  if (heat !== null) return heat;
  const task = draft.tasks.get(readName(activity).id);
  const demands = sessionWords(draft, activity);
  const isNone = task !== undefined && (draft.calendars.get(taskCalendar(draft, task))?.intervals.length ?? 0) === 0;
  if (isNone) return { text: `No time ahead is ${demands}.`, change: 'Add such a session.' };
  const mode = task?.inOneGo ? 'in one go' : `in pieces of ${SHORTEST_PIECE} min or more`;
  const length = task ? `, ${taskMinutes(draft.document, task)} min ${mode}` : '';
  return { text: `Needs time ${demands}${length}: the first that is left starts ${at(draft, until)}.`, change: 'Add such a session earlier.' };
}

/** A day's limit in words: what is left of it, what it is, and what would take less of it. */
const EXPOSURES = {
  vibration: { left: 'too few vibration points left', limit: `${VIBRATION_LIMIT_POINTS} points a day`, what: 'vibration', change: 'take a smoother tool' },
  noise: { left: 'too little of a day of noise left', limit: `${NOISE_LIMIT} dB(A) over the day, behind ear protection`, what: 'noise', change: 'take a quieter tool' },
  vapour: { left: 'too little of a day of vapour left', limit: 'eight hours at its limit a day, as without a mask', what: 'vapour', change: 'spray less, or move more air' },
} as const;

/** True when the task in one go takes more of a limit than anybody has in a day. */
function isTooMuchAtOnce({ draft: { document, tasks }, problem }: Compiled, budget: string, activity: string): boolean {
  const task = tasks.get(readName(activity).id);
  const row = problem.budgets?.find(({ id }) => id === budget);
  const perMinute = problem.activities.find(({ id }) => id === activity)?.doses?.find(({ kind }) => kind === row?.dose)?.perMinute ?? 0;
  return task !== undefined && row !== undefined && task.inOneGo && perMinute * taskMinutes(document, task) > row.limit;
}

function budgetWords(compiled: Compiled, { activity, budget }: Extract<Fact, { kind: 'budget' }>): Words {
  const { draft } = compiled;
  const whose = draft.budgetReasons.get(budget);
  if (!whose) throw new Error(`The engine named an unknown budget "${budget}".`);
  const person = draft.document.people.find((candidate) => candidate.id === whose.personId)?.name ?? whose.personId;
  if (whose.kind === 'exposure') {
    const { change, left, limit, what } = EXPOSURES[whose.what];
    if (isTooMuchAtOnce(compiled, budget, activity)) return { text: `In one go it is more ${what} than anybody may get (${limit}).`, change: `Let it pause between sessions, part it into tasks, or ${change}.` };
    return { text: `${person} has ${left} for it on ${formatDay(whose.date)} (${limit}).`, change: `Let somebody else with the skill do one of them, do part of it on another day, or ${change}.` };
  }
  const session = draft.document.sessions.find((candidate) => candidate.id === whose.sessionId);
  const share = Math.round(draft.document.series.fillLimit * 100);
  return {
    text: `${person} is booked to the limit of ${share} % in the session of ${at(draft, session?.start ?? null)}.`,
    change: 'Add a session, or raise the fill limit of the series and plan with less slack.',
  };
}

/** The longest wait of a lag: of a recoat window, or of a link. */
function maxWords(draft: Draft, { from, to }: Lag): Words {
  const window = draft.windows.get(readName(to.activity).id);
  if (window !== undefined && readName(from.activity).id === window.laid.id) return windowWords(draft, window);
  return { text: `Must come within the recoat window after “${activityTitle(draft, from.activity)}”, or be abraded again.`, change: 'Add a session inside the window, choose a material with a wider one, or put the work of a missed window between the two as a task.' };
}

/** Words for a fact about an activity that binds until a moment. */
export function factWords(compiled: Compiled, fact: Fact, until: Instant | null): Words {
  const { draft } = compiled;
  switch (fact.kind) {
    case 'lag-min':
    case 'lag-max': {
      const reason = draft.lagReasons.get(fact.lag);
      const lag = draft.lags.find((candidate) => candidate.id === fact.lag);
      if (!reason || !lag) throw new Error(`The engine named an unknown lag "${fact.lag}".`);
      const words = lagWords(draft, reason, lag.from.activity, until ?? draft.clock.moment(draft.horizon));
      if (fact.kind === 'lag-min') return words;
      return maxWords(draft, lag);
    }
    case 'resource':
      return resourceWords(draft, fact, until);
    case 'crew':
      return crewWords(draft, fact, until);
    case 'state':
      return stateFactWords(draft, fact, until);
    case 'budget':
      return budgetWords(compiled, fact);
    case 'hold':
      return { text: `The part is away until ${at(draft, until)}.`, change: null };
    case 'release':
      return releaseWords(compiled, fact.activity, until);
    case 'previous':
      return { text: `Stays at ${at(draft, until)}, where the accepted plan has it.`, change: 'Pin it to an earlier time and plan again.' };
    case 'pin':
      if (draft.frozen.has(fact.activity)) return { text: `Stays at ${at(draft, until)}: it starts within the ${draft.document.series.frozenDays} days that a new plan leaves alone.`, change: 'Move it by hand, or let fewer days stay as planned.' };
      return { text: `Pinned by hand to ${at(draft, until)}.`, change: 'Take the pin out.' };
    case 'calendar':
    case 'duration':
      return calendarWords(compiled, fact.activity, until);
    case 'latest-end': {
      const window = draft.windows.get(readName(fact.activity).id);
      return window === undefined ? { text: `“${activityTitle(draft, fact.activity)}” has a latest end.`, change: null } : windowWords(draft, window);
    }
    case 'due':
      return { text: `“${activityTitle(draft, fact.activity)}” has a latest end.`, change: null };
    case 'horizon':
      return { text: `The last session ends before there is time for it (sessions reach to ${at(draft, draft.clock.moment(draft.horizon))}).`, change: 'Add sessions for later weeks.' };
    default:
      return fact satisfies never;
  }
}

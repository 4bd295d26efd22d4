/** What it would mean to fix a block of a plan at another time, in trade words. Nothing is saved. */
import { formatMoment } from '@/lib/calendar';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { Clash, Contradiction, Fact, Standing, Trial } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import type { Compiled } from '../compile/compile';
import { readName } from '../compile/names';
import { factWords } from '../explain/fact-words';
import type { Words } from '../explain/lag-words';
import { activityTitle } from '../explain/titles';
import { sessionWords } from './session-words';

/** The answer to a block moved by hand. */
export interface BlockTrial {
  readonly blockId: string;
  readonly title: string;
  /** `fits`: nothing else moves. `displaces`: other work has to give way. `impossible`: no plan could have it there. */
  readonly verdict: Trial['verdict'];
  readonly start: Instant;
  /** null: there is not time enough to end. */
  readonly end: Instant | null;
  /** What it breaks, in words. Empty when it fits. */
  readonly breaks: readonly Words[];
  /** Work that has to give way. */
  readonly givesWay: readonly { readonly blockId: string; readonly title: string }[];
}

/** A session to find a place in, or a moment. */
export type MoveTarget = { readonly sessionId: string } | { readonly at: Instant };

/** First start in the session at which it fits; else the session's first minute the work may begin at; else its first minute. */
function targetMinute(compiled: Compiled, standing: Standing, blockId: string, target: MoveTarget): Result<number> {
  const { clock, document, nowMinute } = compiled.draft;
  if ('at' in target) return ok(clock.down(target.at));
  const session = document.sessions.find(({ id }) => id === target.sessionId);
  if (session === undefined) return fail([issue('record-missing', 'This session is no longer there.', 'Load the page again.')]);
  const from = Math.max(nowMinute, clock.up(session.start));
  return ok(standing.earliest(blockId, from, clock.down(session.end)) ?? from);
}

function followerWords(compiled: Compiled, clash: Clash, moved: string): Words | null {
  const { draft } = compiled;
  const other = clash.activities[0];
  if (clash.fact.kind !== 'lag-min' || other === undefined) return null;
  const lag = draft.lags.find((candidate) => 'lag' in clash.fact && candidate.id === clash.fact.lag);
  const title = `“${activityTitle(draft, other)}”`;
  if (lag?.to.activity === moved) return clash.until === null ? { text: `Needs ${title} first, which has no place in the plan.`, change: null } : null;
  const when = clash.until === null ? 'and would have no time left' : `and could begin ${formatMoment(draft.clock.moment(clash.until), draft.document.series.zone)} at the earliest`;
  return { text: `${title} follows it ${when}.`, change: null };
}

function clashWords(compiled: Compiled, clash: Clash, trial: Trial, moved: string): Words {
  const { fact } = clash;
  const own = followerWords(compiled, clash, moved);
  if (own !== null) return own;
  if (fact.kind === 'calendar') return sessionWords(compiled, moved, trial.start);
  if (fact.kind === 'crew' && clash.activities.length === 0) return sessionWords(compiled, moved, trial.start);
  const until = clash.until === null ? null : compiled.draft.clock.moment(clash.until);
  return factWords(compiled, fact, until);
}

/** The facts of a contradiction, the chosen start itself left out: that is what was asked. */
function contradictionWords(compiled: Compiled, { facts }: Contradiction, trial: Trial, moved: string): readonly Words[] {
  const isOwnTime = (fact: Fact) => (fact.kind === 'calendar' || fact.kind === 'duration') && fact.activity === moved;
  const words = facts
    .filter((fact) => !(fact.kind === 'pin' && fact.activity === moved) && fact.kind !== 'duration')
    .map((fact): Words => {
      if (isOwnTime(fact)) return sessionWords(compiled, moved, trial.start);
      if (fact.kind === 'release' && fact.activity === moved && trial.start < compiled.draft.nowMinute) return { text: 'That time has passed.', change: null };
      if (fact.kind === 'pin') return { text: `“${activityTitle(compiled.draft, fact.activity)}” is pinned by hand.`, change: `Take the pin out of “${activityTitle(compiled.draft, fact.activity)}”.` };
      const about = 'activity' in fact && fact.activity !== moved ? `“${activityTitle(compiled.draft, fact.activity)}”: ` : '';
      const told = factWords(compiled, fact, earliestOf(compiled, fact));
      return { ...told, text: about + told.text };
    });
  return words.length > 0 ? words : [sessionWords(compiled, moved, trial.start)];
}

function earliestOf({ draft, problem }: Compiled, fact: Fact): Instant | null {
  if (fact.kind !== 'release') return null;
  const release = problem.activities.find(({ id }) => id === fact.activity)?.release;
  return release === undefined ? null : draft.clock.moment(release);
}

function dropRepeats(words: readonly Words[]): readonly Words[] {
  return words.filter((one, k) => words.findIndex((other) => other.text === one.text) === k);
}

/**
 * Tries a block at another time against the plan as it stands. Only work of a task can be fixed.
 * Fails with `block-not-movable` or `record-missing`.
 */
export function tryBlock(compiled: Compiled, standing: Standing, blockId: string, target: MoveTarget): Result<BlockTrial> {
  const { draft } = compiled;
  const isKnown = compiled.problem.activities.some(({ id }) => id === blockId);
  if (readName(blockId).kind !== 'task' || !isKnown) return fail([issue('block-not-movable', 'Only unfinished work of a task can be moved by hand.', 'Move the work that it belongs to.')]);
  const title = activityTitle(draft, blockId);
  const impossible = draft.impossible.get(blockId);
  const minute = targetMinute(compiled, standing, blockId, target);
  if (!minute.ok) return minute;
  const trial = standing.tryStart(blockId, minute.value);
  const base = { blockId, title, start: draft.clock.moment(trial.start), end: trial.end === null ? null : draft.clock.moment(trial.end) };
  if (impossible !== undefined) return ok({ ...base, verdict: 'impossible', breaks: [impossible], givesWay: [] });
  const pinned = { ...compiled, problem: { ...compiled.problem, activities: compiled.problem.activities.map((activity) => (activity.id === blockId ? { ...activity, pin: { start: trial.start } } : activity)) } };
  const breaks = trial.contradiction === null ? trial.clashes.map((clash) => clashWords(pinned, clash, trial, blockId)) : contradictionWords(pinned, trial.contradiction, trial, blockId);
  const others = trial.verdict === 'displaces' ? [...new Set(trial.clashes.flatMap(({ activities }) => activities))] : [];
  return ok({ ...base, verdict: trial.verdict, breaks: dropRepeats(breaks), givesWay: others.map((id) => ({ blockId: id, title: activityTitle(draft, id) })) });
}

/** What has happened since the plan was accepted, and the smallest mend of it, in a line. Nothing is saved. */
import { joinWords, type SeriesDocument } from '@/lib/build';
import { formatLength } from '@/lib/calendar';
import { closeOnHolidays } from '@/lib/exchange';
import { findRepair, type Situation } from '@/lib/forecast';
import { openPlan, type PlanDiff, type PlanResult } from '@/lib/plan';
import { addMinutes, MS_PER_MINUTE, type Instant } from '@/lib/units';
import type { ViewContext } from './context';
import { isErrand, linkRecord } from './week-block';
import { formatCount } from './week-words';
import { loadReadings } from './workshop-air';

export interface RepairView {
  /** `Mending it moves 3 blocks: 1 later, 2 with other people. Episode 4 is recorded 2 d later.` */
  readonly text: string;
  /** An episode is recorded later, or no longer. */
  readonly isWorse: boolean;
  /** False: nothing is found that would put it right, and the text says why. */
  readonly canMend: boolean;
}

/** Episodes named before the rest is counted. */
const MOST_NAMED = 2;

/** `Episode 4 is recorded 2 d later`; empty when no recording moves. */
function tellEpisodes({ episodes }: PlanDiff, document: SeriesDocument): { readonly text: string; readonly isWorse: boolean } {
  const moved = episodes.filter(({ after, before, shift }) => (before !== null && after === null) || (shift !== null && shift !== 0))
    .toSorted((a, b) => (b.shift ?? Infinity) - (a.shift ?? Infinity));
  const words = moved.slice(0, MOST_NAMED).map(({ after, episodeId, shift }) => {
    const { name } = linkRecord('episode', episodeId, document.episodes);
    if (after === null || shift === null) return `${name} is no longer recorded in full`;
    return `${name} is recorded ${formatLength(Math.abs(shift))} ${shift > 0 ? 'later' : 'sooner'}`;
  });
  const rest = moved.length - words.length;
  const all = [...words, ...(rest > 0 ? [`${formatCount(rest, 'other episode moves', 'other episodes move')}`] : [])];
  return { text: all.length === 0 ? 'No recording moves.' : `${all.join(', ')}.`, isWorse: moved.some(({ shift }) => shift === null || shift > 0) };
}

/** The mend of a plan for the series as it is now. Pure. */
function computeRepair(at: Situation): RepairView {
  const found = findRepair(at);
  if (!found.ok) return { text: found.error.map(({ fix, message }) => `${message} ${fix}`).slice(0, MOST_NAMED).join(' '), isWorse: true, canMend: false };
  const { diff, standing } = found.value;
  const { isWorse, text } = tellEpisodes(diff, at.document);
  const count = diff.changes.length;
  const moves = count === 0 ? 'Nothing has to move.' : `Mending it changes ${formatCount(count, 'block')}: ${diff.summary}`;
  const without = standing.unplaced === 0 ? '' : ` ${formatCount(standing.unplaced, 'piece')} of work would have no place.`;
  return { text: `${moves} ${text}${without}`, isWorse: isWorse || standing.unplaced > 0, canMend: true };
}

/** Minutes after its planned end before open work counts as run over: somebody may be about to tick it. Our choice. */
const GRACE = 30;

/** Names of work whose planned time is over, in the order of the plan. @param plan of what is still open */
function listRunOver({ blocks }: PlanResult, now: Instant): readonly string[] {
  return blocks.filter(({ end, kind }) => addMinutes(end, GRACE) <= now && (kind === 'task' || isErrand(kind))).map(({ title }) => title);
}

function tellRunOver(names: readonly string[]): string {
  if (names.length === 0) return '';
  const rest = names.length - MOST_NAMED;
  const named = joinWords([...names.slice(0, MOST_NAMED), ...(rest > 0 ? [`${rest} more`] : [])]);
  return `${named} should be done by now and ${names.length === 1 ? 'is' : 'are'} not ticked: tick what is done. `;
}

/** Minutes for which an answer is given again while neither series nor plan has changed: Now asks once a minute. */
const STEP = 5;
const kept = new WeakMap<SeriesDocument, { readonly key: string; readonly view: RepairView }>();

/** Null: there is no plan, it still fits what it was made from and nothing has run over, or a draft waits that knows of it. */
export async function viewRepair({ now, storage }: ViewContext, document: SeriesDocument): Promise<RepairView | null> {
  const [plan, draft] = await Promise.all([storage.acceptedPlan(document.series.id), storage.latestDraft(document.series.id)]);
  if (plan === null) return null;
  const left = openPlan(document, plan.result);
  const over = listRunOver(left, now);
  if (document.planChange <= plan.basedOnChange && over.length === 0) return null;
  if (draft !== null && draft.basedOnChange >= document.planChange && listRunOver(left, draft.madeAt).length === over.length) return null;
  const key = `${plan.number} ${over.length} ${Math.floor(now / (STEP * MS_PER_MINUTE))}`;
  const known = kept.get(document);
  if (known?.key === key) return known.view;
  const mend = computeRepair({ document: await closeOnHolidays(document, now), plan: left, now, readings: await loadReadings(storage, document) });
  const view = { ...mend, text: `${tellRunOver(over)}${mend.text}` };
  kept.set(document, { key, view });
  return view;
}

/** The least changes that would give a place to work that a plan leaves out: each is tried in the plan as it stands. */
import { formatMoment } from '@/lib/calendar';
import { Standing, type Placement, type Problem, type Schedule } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import type { Compiled } from '../compile/compile';
import type { UnplacedWork } from '../model';
import { activityTitle } from './titles';
import { widerSessions } from './wider-sessions';
import { widerWork } from './wider-work';
import { chainTo, lastUnplaced, type Narrowed, type Wanted } from './widening';

/** A change that was tried: with it the work has a place while all else of the plan stays. */
export interface PlaceRelief {
  readonly text: string;
  /** When the work would begin. */
  readonly start: Instant;
}

export interface PlaceAnswer {
  /** Smallest change first. */
  readonly reliefs: readonly PlaceRelief[];
  /** Changes that were tried in their widest form. */
  readonly tried: number;
  /** Why nothing could be tried; null: it could. */
  readonly problem: string | null;
}

/** So many are enough to choose from. */
const MOST = 3;
/** More work than this hangs together: no small change gives all of it a place. */
const LONGEST_CHAIN = 16;

/** Gives the work, all that hangs together with it and what gives way a place one after the other; null when one of them finds none. */
function settleAll({ chain: before, schedule, target }: Wanted, problem: Problem, givesWay: readonly string[]): readonly Placement[] | null {
  const left = { ...schedule, placements: schedule.placements.filter(({ activity }) => !givesWay.includes(activity)) };
  const known = new Set(problem.activities.map(({ id }) => id));
  if (!known.has(target)) return null;
  const after = chainTo(problem, schedule, target);
  const chain = [...after, ...before.filter((id) => known.has(id) && !after.includes(id))];
  if (chain.length > LONGEST_CHAIN) return null;
  const standing = new Standing(problem, left);
  const order = [...chain, ...givesWay];
  const placements: Placement[] = [];
  for (const [k, id] of order.entries()) {
    const placement = standing.settle(id, chain.slice(k + 1));
    if (placement === null) return null;
    placements.push(placement);
  }
  return placements;
}

/** Tries a change as it would be made. */
function tryNarrow(wanted: Wanted, { givesWay = [], problem, size, text }: Narrowed): (PlaceRelief & { readonly size: number }) | null {
  const placements = settleAll(wanted, problem(), givesWay);
  const own = placements?.find(({ activity }) => activity === wanted.target);
  if (own === undefined) return null;
  const { clock, document } = wanted.compiled.draft;
  const start = clock.moment(own.start);
  return { start, size, text: `${text}: it then has a place ${formatMoment(start, document.series.zone)}.` };
}

/** The smallest changes that were tried and give the work a place. */
function findReliefs(wanted: Wanted, blockers: readonly string[]): PlaceAnswer {
  const widenings = [...widerWork(wanted, blockers), ...widerSessions(wanted)].toSorted((a, b) => a.size - b.size);
  const found: (PlaceRelief & { readonly size: number })[] = [];
  let tried = 0;
  const sorts = new Set<string>();
  for (const { narrow, size, sort, wide } of widenings) {
    // What comes now is no smaller than the last of enough.
    if (found.length >= MOST && found.every((relief) => relief.size <= size)) break;
    if (sort !== undefined && sorts.has(sort)) continue;
    tried += 1;
    const placements = wide === null ? [] : settleAll(wanted, wide(), []);
    const change = placements === null ? null : narrow(placements);
    const relief = change === null || found.some(({ text }) => text.startsWith(change.text)) ? null : tryNarrow(wanted, change);
    if (relief !== null) {
      found.push(relief);
      if (sort !== undefined) sorts.add(sort);
    }
    // Nothing has to change: that is the whole answer.
    if (relief?.size === 0) break;
  }
  const reliefs = found.toSorted((a, b) => a.size - b.size || a.start - b.start).slice(0, MOST).map(({ start, text }) => ({ start, text }));
  return { reliefs, tried, problem: null };
}

/**
 * What would give a place to work that a plan leaves out, and to all that has to have one with it: up to three changes, the smallest
 * first, each tried in the plan as it stands. `schedule` is that of the plan the work is left out of.
 */
export function explainUnplaced(compiled: Compiled, schedule: Schedule, work: UnplacedWork): PlaceAnswer {
  const target = lastUnplaced(compiled.problem, schedule, work.subject);
  if (target === null) return { reliefs: [], tried: 0, problem: 'There is no such work to plan any more: plan again.' };
  const chain = chainTo(compiled.problem, schedule, target);
  if (chain.length > LONGEST_CHAIN) {
    return { reliefs: [], tried: 0, problem: `It waits for ${chain.length - 1} pieces of work without a place: begin with “${activityTitle(compiled.draft, chain[0]!)}”.` };
  }
  const wanted: Wanted = { compiled, schedule, document: compiled.draft.document, chain, target };
  return findReliefs(wanted, work.because.flatMap(({ blockId }) => blockId ?? []));
}

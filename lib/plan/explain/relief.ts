/** Why a block stands where it does, back to what nothing holds, and the least changes that would free it. */
import { formatLength, formatMoment } from '@/lib/calendar';
import { explainChain, explainPlacement, Standing, type Schedule } from '@/lib/scheduling';
import type { Instant } from '@/lib/units';
import type { Compiled } from '../compile/compile';
import { factWords } from './fact-words';
import { listCandidates, type Candidate } from './relief-candidates';
import { activityTitle } from './titles';

export interface ChainStep {
  readonly blockId: string;
  readonly title: string;
  readonly start: Instant;
  /** What holds it; null: nothing does. */
  readonly text: string | null;
}

/** A change that was tried: the block really could start then while all else stays. */
export interface Relief {
  readonly text: string;
  readonly start: Instant;
  /** Minutes gained. */
  readonly gained: number;
}

export interface Explained {
  readonly chain: readonly ChainStep[];
  /** Smallest change first. */
  readonly reliefs: readonly Relief[];
}

/** A gain that is worth a change, minutes. */
const WORTH = 15;
const MOST = 4;
const LONGEST_CHAIN = 12;

function tellChain(compiled: Compiled, schedule: Schedule, blockId: string): readonly ChainStep[] {
  const { draft, problem } = compiled;
  return explainChain(problem, schedule, blockId).slice(0, LONGEST_CHAIN).map(({ activity, reason, start }) => ({
    blockId: activity, title: activityTitle(draft, activity), start: draft.clock.moment(start),
    text: reason === null ? null : factWords(compiled, reason.fact, draft.clock.moment(Math.min(reason.until, draft.horizon))).text,
  }));
}

/** Propagates the problem with the change, everything else of the plan where it stands. */
function tryCandidate(compiled: Compiled, schedule: Schedule, candidate: Candidate, block: { readonly id: string; readonly start: number }): Relief | null {
  const placements = schedule.placements.filter(({ activity }) => !candidate.without.includes(activity));
  const found = new Standing(candidate.problem, { ...schedule, placements }).earliest(block.id, 0, block.start - WORTH);
  if (found === null) return null;
  const { clock, document } = compiled.draft;
  const gained = block.start - found;
  const start = clock.moment(found);
  return { start, gained, text: `${candidate.text}: frees it ${formatMoment(start, document.series.zone)}, ${formatLength(gained)} earlier.` };
}

/**
 * The chain back from a block of a plan, and up to four changes that were tried and free it, the smallest first.
 * Empty for what is no work of the plan that is still to begin.
 */
export function explainBlock(compiled: Compiled, schedule: Schedule, blockId: string): Explained {
  const start = schedule.placements.find(({ activity }) => activity === blockId)?.start;
  if (start === undefined) return { chain: [], reliefs: [] };
  const { problem } = compiled;
  const reasons = explainPlacement(problem, schedule, blockId);
  const block = { id: blockId, start };
  const free: Candidate = { text: 'Nothing but the order of the plan keeps it here. Pin it there', size: 0, problem, without: [] };
  const tried = [free, ...listCandidates(compiled, reasons, blockId, start)].toSorted((a, b) => a.size - b.size);
  const texts = new Set<string>();
  const reliefs = tried.flatMap((candidate) => {
    if (texts.has(candidate.text)) return [];
    texts.add(candidate.text);
    return tryCandidate(compiled, schedule, candidate, block) ?? [];
  });
  return { chain: tellChain(compiled, schedule, blockId), reliefs: reliefs.slice(0, MOST) };
}

/** A block moved by hand, as the week page tells it. Pure. */
import type { BlockTrial } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import { formatRange } from './week-words';

/** The answer with its moments in the series' zone. */
export interface TrialView {
  readonly verdict: BlockTrial['verdict'];
  readonly start: Instant;
  /** `Tue 1 Dec 18:30–20:10`. */
  readonly when: string;
  readonly breaks: BlockTrial['breaks'];
  /** Titles of the work that has to give way. */
  readonly givesWay: readonly string[];
}

export function tellTrial({ breaks, end, givesWay, start, verdict }: BlockTrial, zone: string): TrialView {
  return { verdict, start, when: formatRange(start, end ?? start, zone), breaks, givesWay: givesWay.map(({ title }) => title) };
}

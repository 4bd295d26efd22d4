/** A block moved by hand, as the week page tells it. Pure. */
import { formatMoment } from '@/lib/calendar';
import type { BlockTrial, Explained } from '@/lib/plan';
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

/** The chain behind a block and what frees it. */
export interface ExplainedView {
  readonly chain: readonly { readonly title: string; readonly when: string; readonly text: string | null }[];
  /** `Keep the primer at 20 °C …: frees it Mon 30 Nov 18:00, 16 h earlier.` Smallest change first. */
  readonly reliefs: readonly string[];
}

export function tellExplained({ chain, reliefs }: Explained, zone: string): ExplainedView {
  return {
    chain: chain.map(({ start, text, title }) => ({ title, text, when: formatMoment(start, zone) })),
    reliefs: reliefs.map(({ text }) => text),
  };
}

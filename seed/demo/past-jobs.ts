/** Jobs that came back before the demo begins: what a trade says, and what it took. */
import type { OutsideJob } from '@/lib/build';
import type { EstimateDraft } from './draft';
import { momentOf, type Frame } from './raise';

interface PastDraft {
  readonly id: string;
  readonly name: string;
  readonly trade: string;
  /** Working days. */
  readonly quote: EstimateDraft;
  /** Days before the first Monday, both Tuesdays or Thursdays, when the trades are open. */
  readonly out: number;
  readonly back: number;
}

const past: readonly PastDraft[] = [
  { id: 'job-past-brackets', name: 'Zinc plate a box of brackets', trade: 'trade-plater', quote: [4, 6, 9], out: -90, back: -83 },
  { id: 'job-past-levers', name: 'Polish and plate the spare levers', trade: 'trade-plater', quote: [8, 10, 14], out: -69, back: -55 },
  { id: 'job-past-trial-zinc', name: 'Galvanize a trial bracket', trade: 'trade-galvanizer', quote: [4, 5, 8], out: -83, back: -76 },
  { id: 'job-past-trial-powder', name: 'Powder coat a trial plate', trade: 'trade-powder', quote: [5, 6, 9], out: -62, back: -54 },
  { id: 'job-past-cush', name: 'Turn a cush drive bush', trade: 'trade-machinist', quote: [3, 5, 8], out: -55, back: -48 },
  { id: 'job-past-chain-guard', name: 'Powder coat the chain guard', trade: 'trade-powder', quote: [5, 6, 9], out: -41, back: -33 },
];

export function raisePastJobs(frame: Frame, firstOrder: number): readonly OutsideJob[] {
  return past.map(({ id, name, trade, quote: [low, likely, high], out, back }, index) => ({
    kind: 'outsideJob', id, revision: 1, order: firstOrder + index, name, tradeId: trade, episodeId: null, parts: [], quote: { low, likely, high }, crew: 1,
    droppedOffAt: momentOf(frame, { day: out, at: '11:00' }), promisedFor: null, collectedAt: momentOf(frame, { day: back, at: '14:00' }),
  }));
}

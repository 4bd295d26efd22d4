import type { Issue } from '@/lib/result';
import type { TrialView } from '@/lib/views';
import type { Wish } from './try-answer';

/** What moving needs to know of a block. */
export interface MovedBlock {
  readonly id: string;
  readonly taskId: string;
  readonly revision: number;
  readonly title: string;
  /** Where the plan has it, milliseconds. */
  readonly start: number;
  readonly when: string;
}

/** A block in the hand, with the last answer. */
export interface Held {
  readonly block: MovedBlock;
  /** Where it is wished now; null while a session's first place is being looked for. */
  readonly at: number | null;
  readonly answer: TrialView | null;
  readonly issues: readonly Issue[];
}

/** The hand of the page. */
export interface Mover {
  readonly held: Held | null;
  /** Takes the block up where it stands and shows what can be done with it. */
  readonly take: (blockId: string) => void;
  /** Asks what it would mean there. */
  readonly wish: (blockId: string, wish: Wish) => void;
  /** One step of the hand from where it is wished now. */
  readonly step: (blockId: string, direction: -1 | 1) => void;
  readonly drop: () => void;
}

/** What of a plan the log and its checks look at. A block of a saved plan fits in here as it is. */
import type { Instant } from '@/lib/units';

export interface PlannedSpan {
  readonly start: Instant;
  readonly end: Instant;
}

export interface PlannedBlock {
  readonly id: string;
  readonly kind: 'task' | 'before-shot' | 'late-work' | 'drop-off' | 'collection' | 'away' | 'cure' | 'shut';
  readonly subject: { readonly kind: 'task' | 'outsideJob'; readonly id: string };
  readonly title: string;
  readonly start: Instant;
  readonly end: Instant;
  readonly pieces: readonly PlannedSpan[];
  readonly placeId: string | null;
  readonly crewIds: readonly string[];
  readonly partIds: readonly string[];
  /** For `cure` blocks, when the coat reaches each stage. */
  readonly stages: {
    readonly materialId: string;
    readonly touchDry: Instant;
    readonly recoatFrom: Instant;
    readonly recoatUntil: Instant | null;
    readonly handle: Instant;
    readonly fullCure: Instant;
  } | null;
}

/** Forecasts and variants as they are kept: numbered, with the plan they were made from. */
import type { EpisodeOutlook } from '@/lib/plan';
import type { Instant } from '@/lib/units';
import type { RemedyKind } from './remedies';
import type { ForecastResult } from './result';
import type { WhatIf } from './what-if';
import type { Standing } from './what-if-effect';

/** A what-if kept under a name: what happened, the change chosen, and what came of it. */
export interface Variant {
  readonly whatIfs: readonly WhatIf[];
  readonly remedy: RemedyKind | null;
  readonly words: readonly string[];
  readonly standing: Standing;
  readonly episodes: readonly EpisodeOutlook[];
  /** What moves against the plan that counted, in a sentence, and block by block. */
  readonly summary: string;
  readonly changes: readonly { readonly title: string; readonly text: string }[];
}

/** What is kept about either. */
export type Kept =
  | { readonly kind: 'forecast'; readonly result: ForecastResult }
  | { readonly kind: 'variant'; readonly variant: Variant };

interface Head {
  readonly name: string;
  /** Plan it was made from; 0: none was accepted. */
  readonly planNumber: number;
  readonly madeAt: Instant;
}

export type NewForecast = Head & Kept;

export type SavedForecast = Head & { readonly number: number } & Kept;

import type { Score } from '../problem';

/** What a stopping rule may look at. */
export interface SearchState {
  readonly schedulesTried: number;
  readonly best: Score | null;
  /** No schedule ends before this minute. */
  readonly lowerBound: number;
}

/** Says which share of its budget is used up; the search ends at 1. */
export interface StopRule {
  share(state: SearchState): number;
}

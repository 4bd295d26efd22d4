import type { Problem, Schedule } from '../problem';
import { checkBudgets, checkCapacity, checkCrew, checkHolds } from './capacity';
import { checkHorizon, checkLatestEnds, checkPins, checkReleases } from './dates';
import { checkDoses } from './doses';
import { checkElapsedLags, checkMaximumLags, checkTableLags, checkWorkingLags } from './lags';
import { checkShortestPieces } from './pieces';
import { checkStates } from './states';
import type { Rule, Violation } from './violation';
import { checkCompleteness, checkScore } from './whole';
import { checkCalendarMembership, checkDuration, checkOneGo, checkSplitPieces } from './work';

export type { Rule, Violation } from './violation';

/** Every rule by name. Written apart from the engine: the two share the friendly types and nothing else. */
export const RULES = {
  checkCompleteness, checkDuration, checkCalendarMembership, checkOneGo, checkSplitPieces, checkShortestPieces,
  checkElapsedLags, checkWorkingLags, checkTableLags, checkMaximumLags,
  checkCapacity, checkCrew, checkHolds, checkBudgets, checkDoses, checkStates,
  checkReleases, checkLatestEnds, checkPins, checkHorizon, checkScore,
} as const satisfies Record<string, Rule>;

/** All rules a schedule breaks; empty when it is sound. The problem must be well formed. */
export function check(problem: Problem, schedule: Schedule): readonly Violation[] {
  return Object.values(RULES).flatMap((rule) => rule(problem, schedule));
}

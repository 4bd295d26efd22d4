/** Odds of a plan: simulation over the engine's own rules, progress against time, past forecasts judged, and what to do when a week breaks. */
export { checkAssumptions, DEFAULT_ASSUMPTIONS, tellAssumptions, type Assumptions } from './assumptions';
export { estimateAtCompletion, type AtCompletion } from './at-completion';
export { calibrate, pinballLoss, type Calibration, type Judged } from './calibration';
export { findChances, withDaySaved, withSaving, type ChanceSources, type LearnedFactor } from './chances';
export { earnedSchedule, type EarnedSchedule } from './earned-schedule';
export { continueSessions } from './more-sessions';
export { learnedFactors } from './learned';
export {
  findThreats, findTradeThreats, promiseDate, tellResult, threeMoments, worthOf, type BankWeek, type EpisodeForecast, type ForecastResult, type Outlook, type Threat, type TradeThreat,
} from './result';
export { meanOf, quantileOf } from './statistics';
export { isRemedyKind, type RemedyKind } from './remedies';
export { findTarget, isWhatIfKind, listSizes, WHAT_IF_KINDS, WHAT_IFS, type Situation, type Target, type WhatIf, type WhatIfKind } from './what-if';
export { changeFor, findEffect, findOutcome, findRepair, isHarmful, type RemedyEffect, type Standing, type WhatIfEffect } from './what-if-effect';
export type { NewForecast, SavedForecast, Variant } from './saved';

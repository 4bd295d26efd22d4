/** What was filmed and seen, whether it cuts together, and what must be filmed again. Rules only. */
export type { Check, Finding } from './checks/check';
export type { AiredPiece } from './airing';
export { recordedSpan, sayClock, type RecordedSpan } from './camera-clock';
export { CHECKS } from './checks';
export { correctClock, type ClockReading } from './device-clock';
export { findDisagreements, type Disagreement } from './disagreements';
export { gatherFacts, lookAt, nameOfState, takesOfPiece, type Facts, type FactsInput, type KnownElsewhere } from './facts';
export * from '@/lib/takes';
export { findPickups, pickupName, type NeededPart, type Pickup } from './pickups';
export type { PlannedBlock, PlannedSpan } from './planned-block';
export { listPromises, type PromiseStanding } from './promises';
export { groupByEpisode, runChecks, type CheckedFinding, type EpisodeFindings, type Waived } from './run-checks';
export { BEGINNING, drawStateLines, stateAt, whereaboutsAt, type Redo, type StateLine, type StatePoint } from './state-line';

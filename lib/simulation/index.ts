/** Runs of a plan under drawn luck, on the engine's own rules. Small on purpose: it is loaded in each thread. */
export { joinBlocks } from './blocks';
export { retakeShares } from './draws';
export type { AbsenceChance, ColdChance, DelayChance, ForecastInput, LengthChance, RunBlock, SpoilChance } from './model';
export { Simulation } from './simulate';

export type * from './problem';
export { solve, type SolveOptions } from './solve';
export { validate } from './validate';
export type { SearchState, StopRule } from './stop/rule';
export { afterWork } from './stop/after-work';
export { afterTime } from './stop/after-time';
export { atBound } from './stop/at-bound';
export { anyOf } from './stop/any-of';
export { check, RULES, type Rule, type Violation } from './check';

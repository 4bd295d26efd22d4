export type * from './model';
export { compilePlan, type Compiled } from './compile/compile';
export { previousBlocks, type PreviousBlock } from './compile/draft';
export { isFilmed } from './compile/session-calendars';
export { beforeShots, shotsAhead, taskMinutes } from './compile/task-activities';
export { diffPlans, type EpisodeChange, type PlanChange, type PlanDiff } from './diff';
export { findFallback, type FallbackTask } from './fallback';
export { raisePlan } from './raise/raise';
export { tellContradiction } from './explain/contradiction';

/** The database: whole series, their history and their plans. */
export { openStorage } from './storage';
export type { Storage } from './storage';
export type { SeriesSummary } from './document';
export type { NewPlan, PlanSummary } from './plans';
export type { Settings } from './connection';

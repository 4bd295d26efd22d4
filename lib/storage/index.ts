/** The database: whole series, their history and their plans. */
export { openStorage } from './storage';
export type { Storage } from './storage';
export type { SeriesSummary } from './document';
export type { PlanSummary } from './plans';
export type { KeptEntry, LogExtent, NewLogEntry } from './log';
export type { LogPhoto, PhotoSize } from './photos';

/** What a build and its series are made of, what holds between its records, and how they are changed. */
export type * from './model';
export type * from './edit';

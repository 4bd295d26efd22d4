/** What every page is made of. */
export { Button, LinkButton, type ButtonLook } from './button';
export { EmptyState } from './empty-state';
export { CheckField, Field, FieldErrors, FieldGroup, SelectField, TextField } from './field';
export { Fold } from './fold';
export { IssueList, Refused } from './issue-list';
export { NoticeHost, useNotices } from './notice';
export { PageHead } from './page-head';
export * from './paths';
export { ScrollRegion } from './scroll-region';
export { HomeBand, PageBody, SeriesBand } from './shell';
export { UntilReady } from './until-ready';

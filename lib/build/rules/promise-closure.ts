import { issue } from '@/lib/result';
import { startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** A promise that is replaced or withdrawn says why: viewers are told. */
export const checkPromises: Rule = ({ promises }) =>
  promises.filter(({ closure, reason }) => (closure === 'replaced' || closure === 'withdrawn on screen') && reason.trim() === '').map((promise) =>
    issue('promise-without-reason', `${startWith(promise)} is ${promise.closure} without a reason.`, 'Write what is said on screen about it.', { path: ['reason'], subjects: subjectsOf(promise) }));

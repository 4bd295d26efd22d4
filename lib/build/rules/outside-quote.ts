import { issue } from '@/lib/result';
import { count, formatNumber, quoteName, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

const POINTS = [['low', 'smallest'], ['likely', 'likeliest'], ['high', 'largest']] as const;
const days = (amount: number): string => count(amount, 'working day');

/** Quotes are 0 working days or more and in order, low <= likely <= high. */
export const checkOutsideQuotes: Rule = (document) =>
  document.outsideJobs.flatMap((job) => {
    const subjects = subjectsOf(job);
    const { quote } = job;
    const negative = POINTS.filter(([key]) => !(quote[key] >= 0 && Number.isFinite(quote[key]))).map(([key, word]) =>
      issue('quote-negative', `${startWith(job)} has a ${word} quote of ${formatNumber(quote[key])} working days; it is 0 or more.`, 'Type 0 or more.', { path: ['quote', key], subjects }));
    if (negative.length > 0 || (quote.low <= quote.likely && quote.likely <= quote.high)) return negative;
    const isLow = quote.low > quote.likely;
    return [issue('quote-out-of-order',
      `The quotes of the outside job ${quoteName(job.name)} are out of order: smallest ${days(quote.low)}, likeliest ${days(quote.likely)}, largest ${days(quote.high)}.`,
      isLow ? `Type a smallest quote of ${days(quote.likely)} or less.` : `Type a largest quote of ${days(quote.likely)} or more.`,
      { path: ['quote', isLow ? 'low' : 'high'], subjects })];
  });

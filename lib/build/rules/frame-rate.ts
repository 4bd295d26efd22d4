import { issue } from '@/lib/result';
import { formatNumber, startWith, subjectsOf } from '../words';
import type { Rule } from './rule';

/** Frames a second as a fraction of two whole numbers from 1. */
export const checkFrameRate: Rule = ({ series }) => {
  const { numerator, denominator } = series.frameRate;
  if ([numerator, denominator].every((value) => Number.isInteger(value) && value >= 1)) return [];
  return [issue('frame-rate', `${startWith(series)} has ${formatNumber(numerator)}/${formatNumber(denominator)} frames a second; both must be whole numbers from 1.`,
    'Type 25 over 1, or 30000 over 1001.', { path: ['frameRate', numerator >= 1 ? 'denominator' : 'numerator'], subjects: subjectsOf(series) })];
};

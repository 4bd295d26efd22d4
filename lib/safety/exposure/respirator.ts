/** Arithmetic of assigned protection factors. The factors are from memory (HSG53; 29 CFR 1910.134 Table 1) and shown as unverified. */
import { fail, issue, ok, type Result } from '@/lib/result';

export interface Respirator {
  readonly name: string;
  /** Assigned protection factor: outside divided by inside, when it fits. */
  readonly factor: number;
  readonly scheme: 'UK' | 'US';
  readonly status: 'memory';
}

export const RESPIRATORS: readonly Respirator[] = [
  { name: 'FFP2', factor: 10, scheme: 'UK', status: 'memory' },
  { name: 'FFP3, or half mask with P3', factor: 20, scheme: 'UK', status: 'memory' },
  { name: 'Half mask with gas filter', factor: 10, scheme: 'UK', status: 'memory' },
  { name: 'Full-face mask with P3', factor: 40, scheme: 'UK', status: 'memory' },
  { name: 'Air-fed hood, class 3', factor: 40, scheme: 'UK', status: 'memory' },
  { name: 'Half mask', factor: 10, scheme: 'US', status: 'memory' },
  { name: 'Full-face mask', factor: 50, scheme: 'US', status: 'memory' },
  { name: 'Loose-fitting hood, supplied air', factor: 25, scheme: 'US', status: 'memory' },
];

/** The factor that brings a concentration down to its limit, both in one unit. Fails with `exposure-out-of-range`. */
export function neededFactor(concentration: number, limit: number): Result<number> {
  if (!(concentration >= 0) || !Number.isFinite(concentration) || !(limit > 0)) {
    return fail([issue('exposure-out-of-range', `A concentration of ${concentration} against a limit of ${limit} cannot be compared.`, 'Give a concentration of 0 or more and a limit above 0, in one unit.')]);
  }
  return ok(concentration / limit);
}

/** What is breathed behind it, in the unit of the concentration. @example insideMask(400, 20) // 20 */
export function insideMask(concentration: number, factor: number): number {
  return concentration / factor;
}

/** The most that may be outside. @example highestOutside(50, 10) // 500 */
export function highestOutside(limit: number, factor: number): number {
  return limit * factor;
}

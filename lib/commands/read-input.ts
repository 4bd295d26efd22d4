import { fail, issue, ok, type Result } from '@/lib/result';
import type { z } from 'zod';
import { splitMessage } from './schemas/values';

/** Reads what a small form sent; all that is wrong as `input-value`. */
export function readInput<T>(schema: z.ZodType<T>, input: unknown): Result<T> {
  const parsed = schema.safeParse(input);
  if (parsed.success) return ok(parsed.data);
  return fail(parsed.error.issues.map((found) => {
    const { problem, fix } = splitMessage(found.message);
    return issue('input-value', problem, fix, { path: found.path.filter((step) => typeof step !== 'symbol') });
  }));
}

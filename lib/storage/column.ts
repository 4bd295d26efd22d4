/** Reading of columns that SQLite cannot check by itself: JSON and words from a fixed list. */
import { instant } from '@/lib/units';
import type { Instant } from '@/lib/units';
import { z } from 'zod';

/** Where a value stands, for the error. */
export interface Cell {
  readonly table: string;
  readonly row: string;
  readonly column: string;
}

/** @throws Error naming table, row and column when the text is no JSON or not of this shape: the file was damaged or edited. */
export function readJson<T>(schema: z.ZodType<T>, text: string, cell: Cell): T {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw damaged(cell, 'is not JSON');
  }
  return readValue(schema, value, cell);
}

/** @throws Error naming table, row and column when the value is not of this shape. */
export function readValue<T>(schema: z.ZodType<T>, value: unknown, cell: Cell): T {
  const read = schema.safeParse(value);
  if (read.success) return read.data;
  const [first] = read.error.issues;
  throw damaged(cell, first ? `${first.path.length > 0 ? `at ${first.path.join('.')}: ` : ''}${first.message}` : 'has another shape');
}

function damaged({ table, row, column }: Cell, what: string): Error {
  return new Error(`The database is damaged: table ${table}, row ${row}, column ${column}: ${what}. Put back a copy from the backups folder.`);
}

/** A word out of a closed list. The record makes the compiler refuse a list that is not the whole type. */
export function oneOf<T extends string>(words: Record<T, true>): z.ZodType<T> {
  return z.custom<T>((value) => typeof value === 'string' && Object.hasOwn(words, value), {
    error: `must be one of ${Object.keys(words).join(', ')}`,
  });
}

export const readInstant = (value: bigint): Instant => instant(Number(value));
export const readOptionalInstant = (value: bigint | null): Instant | null => (value === null ? null : readInstant(value));
export const writeInstant = (value: Instant): bigint => BigInt(value);
export const writeOptionalInstant = (value: Instant | null): bigint | null => (value === null ? null : BigInt(value));

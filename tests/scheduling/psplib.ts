import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { readCases, type PublishedCase } from '../bench/published';

/** A case whose optimum and critical path are published. */
type SolvedCase = PublishedCase & { readonly lb: number; readonly ub: number; readonly cpm: number };

/**
 * Three instances of the set j30: Kolisch & Sprecher (1996), PSPLIB - a project scheduling problem library,
 * European Journal of Operational Research 96. `lb` = `ub` is the published optimum.
 */
export function loadInstances(): readonly SolvedCase[] {
  return readCases(readFileSync(fileURLToPath(new URL('../golden/psplib-j30.jsonl', import.meta.url)), 'utf8')) as SolvedCase[];
}

/**
 * A sample of all faults that could be put in: a folder such as lib/scheduling has ten thousand, which takes hours.
 * Whether a fault belongs to the sample depends on a hash of the salt, its place and what it does alone, so the same
 * share and salt give the same sample everywhere, another salt another one, and each fault is as likely as any other.
 *
 * The mutation tool knows no samples, so its makers of faults are wrapped, before any of them is asked.
 */
import { createHash } from 'node:crypto';

/** @typedef {{ hub?: { file?: { opts?: { filename?: string | null } } }, node: { loc?: unknown } }} NodePath */
/** @typedef {{ name: string, mutate: (path: NodePath) => Iterable<{ type: string }> }} Mutator */

/** How many faults there were to choose from, and how many were chosen. */
export const sampled = { all: 0, chosen: 0 };

/** @param {string} text A number in [0, 1) that looks random. */
function hashOf(text) {
  return createHash('sha256').update(text).digest().readUInt32BE(0) / 2 ** 32;
}

/** @param {NodePath} path */
function placeOf({ hub, node }) {
  const file = hub?.file?.opts?.filename;
  if (typeof file !== 'string') throw new Error('A fault without a file: the sample would not be the same everywhere');
  const inProject = file.slice(Math.max(0, file.lastIndexOf('/lib/')));
  const { end, start } = /** @type {{ start: { line: number, column: number }, end: { line: number, column: number } }} */ (node.loc);
  return [inProject, start.line, start.column, end.line, end.column].join(':');
}

/**
 * From now on only that share of the faults is made.
 * @param {number} share Above 0, at most 1.
 * @param {string} salt
 */
export async function sampleFaults(share, salt) {
  if (!(share > 0 && share <= 1)) throw new RangeError(`A share lies above 0 and is at most 1, got ${share}`);
  const inner = new URL('mutators/index.js', import.meta.resolve('@stryker-mutator/instrumenter'));
  /** @type {{ allMutators: Mutator[] }} */
  const { allMutators } = await import(inner.href);
  for (const mutator of allMutators) {
    const makeAll = mutator.mutate.bind(mutator);
    mutator.mutate = function* makeSome(path) {
      let nth = 0;
      for (const fault of makeAll(path)) {
        nth += 1;
        sampled.all += 1;
        if (hashOf(`${salt}|${placeOf(path)}|${mutator.name}|${nth}`) >= share) continue;
        sampled.chosen += 1;
        yield fault;
      }
    };
  }
}

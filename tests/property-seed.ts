/**
 * Property tests draw the same examples in every run, so that a red run can be repeated and a green one means the same
 * everywhere. `PROPERTY_SEED=random npx vitest run` explores; a number repeats a run that failed.
 */
import * as fc from 'fast-check';

const wanted = process.env.PROPERTY_SEED ?? '20261125';
if (wanted !== 'random') fc.configureGlobal({ seed: Number(wanted) });

/**
 * All tests asked for in one file: the sources are then loaded once for a fault and not once for each file of tests,
 * which takes longer than most tests. Those of single cases come first, for the first that fails ends the look at a fault.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe } from 'vitest';

const TESTS = join(import.meta.dirname, '..');
/** Folders, files that end in .ts, or starts of the names of files. */
const areas = (process.env.MUTATION_TESTS ?? 'calendar').split(',');
/** They start processes or measure time. */
const LEFT_OUT = /machine-zone|speed/;
/** They try many made-up or published cases, which takes its time. */
const SLOW = [/\.property\./, /published/, /examples/];

const isAsked = (file: string): boolean => file.endsWith('.test.ts')
  && areas.some((area) => file.startsWith(`${area}/`) || file === area || (file.startsWith(area) && !file.slice(area.length).includes('/')));
const files = readdirSync(TESTS, { recursive: true, encoding: 'utf8' }).filter((file) => isAsked(file) && !LEFT_OUT.test(file)).toSorted();
const rankOf = (file: string): number => SLOW.findIndex((kind) => kind.test(file));

for (const file of files.toSorted((a, b) => rankOf(a) - rankOf(b))) {
  // Together with the file's name every test has a name of its own.
  describe(file, async () => {
    await import(/* @vite-ignore */ join(TESTS, file));
  });
}

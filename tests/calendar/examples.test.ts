import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { describe, expect, test } from 'vitest';
import * as calendar from '@/lib/calendar';
import { instant } from '@/lib/units';

const FOLDER = join(import.meta.dirname, '../../lib/calendar');
const EXAMPLE = /@example (.+?) \/\/ (.+?)(?: \*\/)?$/gm;

const examples = readdirSync(FOLDER).flatMap((file) =>
  [...readFileSync(join(FOLDER, file), 'utf8').matchAll(EXAMPLE)].map(([, code = '', value = '']) => ({ code, value })),
);

/** As JSON, for values of another context are never equal by class. */
const run = (code: string): string => JSON.stringify(runInNewContext(`(${code})`, { ...calendar, instant }));

describe('the examples in the comments hold', () => {
  test.each(examples)('$code', ({ code, value }) => {
    expect(run(code)).toBe(run(value));
  });

  test('there are some', () => {
    expect(examples.length).toBeGreaterThan(40);
  });
});

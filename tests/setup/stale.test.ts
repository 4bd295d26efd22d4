import { mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readPlaywright, readVitest } from '@/lib/setup/all-tests.mjs';
import { isInstallComplete } from '@/lib/setup/install.mjs';
import { fingerprint, hasMark, writeMark } from '@/lib/setup/stale.mjs';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'benchtake-stale-'));
  await mkdir(path.join(folder, 'lib', 'deep'), { recursive: true });
  await writeFile(path.join(folder, 'lib', 'deep', 'a.ts'), 'a');
  await writeFile(path.join(folder, 'one.json'), '1');
});
afterEach(() => rm(folder, { recursive: true }));

const take = () => fingerprint(folder, ['lib', 'one.json', 'missing'], ['lib/made']);

describe('a fingerprint', () => {
  test('stays while nothing changes', async () => {
    expect(await take()).toBe(await take());
  });

  test.each([
    ['the content of a file deep down', () => writeFile(path.join(folder, 'lib', 'deep', 'a.ts'), 'b')],
    ['a name', () => rename(path.join(folder, 'lib', 'deep', 'a.ts'), path.join(folder, 'lib', 'deep', 'b.ts'))],
    ['a new file', () => writeFile(path.join(folder, 'lib', 'b.ts'), '')],
    ['a source that was missing', () => writeFile(path.join(folder, 'missing'), '')],
  ])('changes with %s', async (_what, change) => {
    const before = await take();
    await change();
    expect(await take()).not.toBe(before);
  });

  test('does not see a folder that is left out', async () => {
    const before = await take();
    await mkdir(path.join(folder, 'lib', 'made'));
    await writeFile(path.join(folder, 'lib', 'made', 'x.ts'), 'x');
    expect(await take()).toBe(before);
  });

  test('is kept in a file beside what was made', async () => {
    const file = path.join(folder, 'made', 'mark');
    expect(await hasMark(file, 'x')).toBe(false);
    await writeMark(file, 'x');
    expect(await hasMark(file, 'x')).toBe(true);
    expect(await hasMark(file, 'y')).toBe(false);
  });
});

describe('an installation', () => {
  const wanted = { packages: { '': {}, 'node_modules/a': { version: '1.0.0' }, 'node_modules/other-system': { version: '2.0.0', optional: true } } };

  test.each([
    ['is complete with every package in its version', { 'node_modules/a': { version: '1.0.0' } }, true],
    ['is not complete with an older package', { 'node_modules/a': { version: '0.9.0' } }, false],
    ['is not complete without a package', {}, false],
    ['is not complete with a wrong version of an optional one', { 'node_modules/a': { version: '1.0.0' }, 'node_modules/other-system': { version: '1.0.0' } }, false],
  ])('%s', (_what, packages, expected) => {
    expect(isInstallComplete(wanted, { packages })).toBe(expected);
  });

  test('is not complete when npm has not finished one', () => {
    expect(isInstallComplete(wanted, null)).toBe(false);
  });
});

describe('the closing line', () => {
  test('counts the unit runner’s report', () => {
    expect(readVitest({ numPassedTests: 7, numFailedTests: 2 })).toEqual({ passed: 7, failed: 2 });
  });

  test('counts a browser test that passed only when repeated as failed', () => {
    expect(readPlaywright({ stats: { expected: 5, unexpected: 1, flaky: 2 } })).toEqual({ passed: 5, failed: 3 });
  });
});

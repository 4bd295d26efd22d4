import { describe, expect, test, vi } from 'vitest';
import { findChromium } from '@/lib/setup/find-chromium.mjs';

/** A machine with these programs in its path; nothing else. */
function machineWith(programs: readonly string[]) {
  const inPath = new Set(programs);
  return {
    isThere: vi.fn((file: string) => file.startsWith('/there/')),
    findInPath: vi.fn((name: string) => (inPath.has(name) ? `/usr/bin/${name}` : null)),
    playwrightOwn: vi.fn(async () => '/nowhere/chrome'),
    canInstall: vi.fn(() => false),
    install: vi.fn(async () => {
      inPath.add('chromium');
      return true;
    }),
  };
}

describe('looking for a Chromium', () => {
  test('takes CHROMIUM_PATH before anything else', async () => {
    expect(await findChromium('/there/mine', machineWith(['chromium']))).toEqual({ path: '/there/mine' });
  });

  test('says so when CHROMIUM_PATH leads nowhere, instead of taking another', async () => {
    const found = await findChromium('/gone/mine', machineWith(['chromium']));
    expect(found).toEqual({ problem: 'CHROMIUM_PATH is /gone/mine, and there is no such file. Correct it, or leave it out.' });
  });

  test.each([
    [['google-chrome', 'chromium-browser', 'chromium'], '/usr/bin/chromium'],
    [['google-chrome', 'chromium-browser'], '/usr/bin/chromium-browser'],
    [['google-chrome'], '/usr/bin/google-chrome'],
  ])('takes the first of the system’s own: %j', async (programs, path) => {
    const machine = machineWith(programs);
    expect(await findChromium(undefined, machine)).toEqual({ path });
    expect(machine.playwrightOwn).not.toHaveBeenCalled();
  });

  test('takes Playwright’s own when the system has none', async () => {
    const machine = { ...machineWith([]), playwrightOwn: async () => '/there/own', canInstall: () => true };
    expect(await findChromium(undefined, machine)).toEqual({ path: '/there/own' });
    expect(machine.install).not.toHaveBeenCalled();
  });

  test('installs Debian’s when it may, and when Playwright is not there at all', async () => {
    const machine = { ...machineWith([]), playwrightOwn: () => Promise.reject(new Error('no such package')), canInstall: () => true };
    expect(await findChromium(undefined, machine)).toEqual({ path: '/usr/bin/chromium' });
  });

  test('says in one line how to get one when it may not install', async () => {
    const machine = machineWith([]);
    const found = await findChromium(undefined, machine);
    expect(found).toEqual({ problem: expect.stringMatching(/^The browser tests need a Chromium: .*CHROMIUM_PATH[^\n]*$/u) });
    expect(machine.install).not.toHaveBeenCalled();
  });

  test('says in one line how to get one when the installation fails', async () => {
    const machine = { ...machineWith([]), canInstall: () => true, install: async () => false };
    expect(await findChromium(undefined, machine)).toHaveProperty('problem');
  });
});

import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { describeDataProblem, findDataProblem } from '@/lib/setup/data-folder.mjs';
import { describeOldNode } from '@/lib/setup/node-version.mjs';
import { describePortProblem, findPortProblem, readPort } from '@/lib/setup/port.mjs';

let folder = '';
beforeEach(async () => {
  folder = await mkdtemp(path.join(os.tmpdir(), 'benchtake-setup-'));
});
afterEach(() => rm(folder, { recursive: true }));

/** A port that another program holds while `use` runs. */
async function withTakenPort<T>(use: (port: number) => Promise<T>): Promise<T> {
  const server = net.createServer();
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('The test server has no port.');
  try {
    return await use(address.port);
  } finally {
    server.close();
  }
}

const start = (env: Record<string, string>) => spawnSync(process.execPath, ['lib/setup/start.mjs'], { env: { ...process.env, ...env }, encoding: 'utf8', timeout: 20_000 });

describe('Node', () => {
  test.each(['20.19.0', '20.20.2', '22.0.0', '25.1.0'])('%s will do', (version) => {
    expect(describeOldNode(version)).toBeNull();
  });

  test.each(['20.18.3', '18.20.4', '16.0.0', '4.9.1'])('%s is refused in one line with one fix', (version) => {
    expect(describeOldNode(version)).toBe(
      `Benchtake needs Node 20.19 or newer; this is Node ${version}. Install the current long-term release from nodejs.org.`,
    );
  });
});

describe('the port', () => {
  test.each([
    [undefined, 4310],
    ['', 4310],
    ['8080', 8080],
    ['0', null],
    ['65536', null],
    ['eighty', null],
    ['80.5', null],
  ])('PORT=%s is read as %s', (text, port) => {
    expect(readPort(text)).toBe(port);
  });

  test('that is free is no problem', async () => {
    const port = await withTakenPort(async (taken) => taken);
    expect(await findPortProblem(port)).toBeNull();
  });

  test('that is taken is told in one line with another one', async () => {
    await withTakenPort(async (port) => {
      expect(await findPortProblem(port)).toBe(`Port ${port} is taken by another program. Stop that one, or choose another port: PORT=${port + 1} npm start`);
    });
  });

  test('below 1024 is told in one line', () => {
    expect(describePortProblem(80, 'EACCES')).toBe('Port 80 may not be used by you. Choose a port above 1023: PORT=4310 npm start');
  });
});

describe('the data folder', () => {
  test('is made when it is not there', async () => {
    expect(await findDataProblem(path.join(folder, 'new', 'benchtake.db'))).toBeNull();
  });

  test('that cannot be made is told in one line with one fix', async () => {
    await writeFile(path.join(folder, 'file'), '');
    const problem = await findDataProblem(path.join(folder, 'file', 'benchtake.db'));
    expect(problem).toMatch(/^The data folder .*file cannot be written \((EEXIST|ENOTDIR)\)\. Make it writable, or choose another file: DATABASE_URL=[^\n]*$/u);
  });

  test.each([
    ['EACCES', 'The data folder /d is read-only for you. Make it writable, or choose another file: DATABASE_URL=file:/path/to/benchtake.db npm start'],
    ['EROFS', 'The data folder /d is on a read-only disk. Make it writable, or choose another file: DATABASE_URL=file:/path/to/benchtake.db npm start'],
    ['ENOSPC', 'The data folder /d cannot be written: the disk is full. Free some space and start again.'],
  ])('with %s is told in one line with one fix', (code, line) => {
    expect(describeDataProblem('The data folder /d', code)).toBe(line);
  });
});

describe('npm start', () => {
  test('ends with exit code 1 and one line when the port is taken', async () => {
    await withTakenPort(async (port) => {
      const { status, stderr, stdout } = start({ PORT: String(port) });
      expect({ status, stdout, stderr }).toEqual({ status: 1, stdout: '', stderr: expect.stringMatching(/^Port \d+ is taken by another program\.[^\n]*\n$/u) });
    });
  });

  test('ends with exit code 1 and one line when PORT is no port', () => {
    const { status, stderr } = start({ PORT: 'eighty' });
    expect({ status, stderr }).toEqual({ status: 1, stderr: 'PORT is "eighty"; it must be a whole number from 1 to 65535. Leave it out for 4310.\n' });
  });

  test('ends with exit code 1 and one line when the data folder cannot be written', async () => {
    await writeFile(path.join(folder, 'file'), '');
    const port = await withTakenPort(async (taken) => taken);
    const { status, stderr } = start({ PORT: String(port), DATABASE_URL: `file:${folder}/file/x.db` });
    expect({ status, stderr }).toEqual({ status: 1, stderr: expect.stringMatching(/^The data folder .* cannot be written[^\n]*\n$/u) });
  });

  test('ends with exit code 1 and one line when DATABASE_URL is of another kind', async () => {
    const port = await withTakenPort(async (taken) => taken);
    const { status, stderr } = start({ PORT: String(port), DATABASE_URL: 'postgres://db' });
    expect({ status, stderr }).toEqual({ status: 1, stderr: expect.stringMatching(/^DATABASE_URL is "postgres:\/\/db"\. Use file:[^\n]*\n$/u) });
  });
});

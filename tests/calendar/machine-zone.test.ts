import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { expect, test } from 'vitest';
import { writeReport } from './machine-zone-report';

const ROOT = join(import.meta.dirname, '../..');
const REPORT = pathToFileURL(join(import.meta.dirname, 'machine-zone-report.ts')).href;
const SCRIPT = `
  const { writeReport } = await import(${JSON.stringify(REPORT)});
  console.log(new Date(2026, 6, 1).getTimezoneOffset());
  console.log(writeReport());
`;

/** The machine's own offset on 1 July 2026, then the report, from a process of its own. */
async function reportUnder(zone: string): Promise<{ readonly offset: string; readonly report: string }> {
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', '--input-type=module', '--eval', SCRIPT], {
    cwd: ROOT,
    env: { ...process.env, TZ: zone, LC_ALL: 'de_DE.UTF-8', NODE_OPTIONS: '' },
    maxBuffer: 32 * 1024 * 1024,
  });
  const [offset = '', ...report] = stdout.trimEnd().split('\n');
  return { offset, report: report.join('\n') };
}

test.each([
  ['UTC', '0'],
  ['America/New_York', '240'],
  ['Pacific/Auckland', '-720'],
  ['Asia/Kolkata', '-330'],
])('a machine set to %s gives the same answers', async (zone, offset) => {
  const answered = await reportUnder(zone);
  expect(answered.offset).toBe(offset);
  expect(answered.report).toBe(writeReport());
});

import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { defineConfig } from '@playwright/test';

// One fresh database with the demo series for the whole run; the test processes inherit its name.
process.env.BENCHTAKE_BROWSER_FOLDER ??= mkdtempSync(path.join(tmpdir(), 'benchtake-browser-'));
const port = Number(process.env.BENCHTAKE_BROWSER_PORT ?? 4391);
const chromium = process.env.CHROMIUM_PATH ?? '/usr/bin/chromium';

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: '.cache/browser',
  fullyParallel: false,
  workers: 1,
  timeout: 60_000,
  expect: { timeout: 10_000 },
  use: {
    baseURL: `http://127.0.0.1:${port}`,
    viewport: { width: 1280, height: 900 },
    locale: 'en-GB',
    launchOptions: {
      executablePath: chromium,
      args: [
        '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking',
        '--disable-component-update', '--disable-sync',
      ],
    },
  },
  webServer: {
    command: 'node lib/setup/start.mjs',
    url: `http://127.0.0.1:${port}`,
    timeout: 300_000,
    reuseExistingServer: process.env.BENCHTAKE_BROWSER_PORT !== undefined,
    env: { PORT: String(port), DATABASE_URL: `file:${process.env.BENCHTAKE_BROWSER_FOLDER}/browser.db` },
  },
});

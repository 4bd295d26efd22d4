/** What `npm start` does once Node is known to be new enough. */
import { spawn } from 'node:child_process';
import { PROJECT_ROOT, stop } from './console.mjs';
import { chooseDatabase, loadDemoIfEmpty, migrateIfBehind } from './database.mjs';
import { buildIfStale, generateIfStale } from './generate.mjs';
import { installIfMissing } from './install.mjs';
import { findPortProblem, HOST, readPort, waitForPort } from './port.mjs';

/** Milliseconds the server has to end by itself. */
const PATIENCE = 3000;

/**
 * Prepares what is missing and serves until it is stopped.
 * @param {{ isDevelopment: boolean }} options
 */
export async function serve({ isDevelopment }) {
  const port = readPort(process.env.PORT);
  if (port === null) stop(`PORT is "${process.env.PORT}"; it must be a whole number from 1 to 65535. Leave it out for 4310.`);
  const portProblem = await findPortProblem(port);
  if (portProblem) stop(portProblem);
  const location = await chooseDatabase();
  await installIfMissing();
  await generateIfStale();
  await migrateIfBehind(location);
  await loadDemoIfEmpty(location);
  if (!isDevelopment) await buildIfStale();
  await runServer(port, location.url, isDevelopment);
}

/**
 * @param {number} port
 * @param {string} databaseUrl
 * @param {boolean} isDevelopment
 */
async function runServer(port, databaseUrl, isDevelopment) {
  const args = ['node_modules/next/dist/bin/next', isDevelopment ? 'dev' : 'start', '-H', HOST, '-p', String(port)];
  const server = spawn(process.execPath, args, {
    cwd: PROJECT_ROOT,
    env: { ...process.env, DATABASE_URL: databaseUrl, NEXT_TELEMETRY_DISABLED: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let isOver = false;
  let isUp = false;
  let banner = '';
  // The server's own greeting is held back; it is shown only when it does not come up. Its errors are not held back.
  server.stdout.on('data', (text) => {
    if (!isUp) banner += text;
    else if (isDevelopment) process.stdout.write(text);
  });
  server.on('close', (code) => {
    isOver = true;
    if (!isUp && !isStopping) process.stderr.write(banner);
    process.exit(isStopping ? 0 : code ?? 1);
  });
  let isStopping = false;
  const end = () => {
    isStopping = true;
    server.kill('SIGTERM');
    setTimeout(() => server.kill('SIGKILL'), PATIENCE).unref();
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
  isUp = await waitForPort(port, () => isOver);
  if (isUp) console.log(`Benchtake is at http://${HOST}:${port}`);
}

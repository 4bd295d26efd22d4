/** The port to serve on. */
import net from 'node:net';
import { codeOf } from './stale.mjs';

export const HOST = '127.0.0.1';
const DEFAULT_PORT = 4310;

/**
 * @param {string | undefined} text the PORT variable
 * @returns {number | null} null when it is no port
 */
export function readPort(text) {
  if (!text?.trim()) return DEFAULT_PORT;
  const port = Number(text);
  return Number.isInteger(port) && port >= 1 && port <= 65_535 ? port : null;
}

/**
 * @param {number} port
 * @returns {Promise<string | null>} one line on what is wrong and what to do, null when the port is free
 */
export function findPortProblem(port) {
  return new Promise((resolve) => {
    const server = net.createServer();
    server.once('error', (error) => resolve(describePortProblem(port, codeOf(error))));
    server.listen(port, HOST, () => server.close(() => resolve(null)));
  });
}

/**
 * @param {number} port
 * @param {string} code of the error
 */
export function describePortProblem(port, code) {
  const other = port === 65_535 ? DEFAULT_PORT : port + 1;
  if (code === 'EADDRINUSE') return `Port ${port} is taken by another program. Stop that one, or choose another port: PORT=${other} npm start`;
  if (code === 'EACCES') return `Port ${port} may not be used by you. Choose a port above 1023: PORT=${DEFAULT_PORT} npm start`;
  return `Port ${port} cannot be used (${code}). Choose another port: PORT=${other} npm start`;
}

/**
 * Waits until something answers on the port.
 * @param {number} port
 * @param {() => boolean} isGivenUp stops the waiting
 * @returns {Promise<boolean>} false when given up
 */
export async function waitForPort(port, isGivenUp) {
  while (!isGivenUp()) {
    if (await isAnswering(port)) return true;
    await new Promise((resolve) => {
      setTimeout(resolve, 25);
    });
  }
  return false;
}

/**
 * @param {number} port
 * @returns {Promise<boolean>}
 */
function isAnswering(port) {
  return new Promise((resolve) => {
    const socket = net.connect(port, HOST);
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}

/** Sends what waits, oldest first, one at a time. What has arrived is dropped; arriving twice does no harm. */
import type { LogAnswer } from '../answer';
import { dropWaiting, listWaiting, refuseWaiting, type Waiting } from './outbox';

/** How a round ended: everything sent, or the network away. */
export type SendState = 'sent' | 'offline';

async function post({ seriesId, what }: Waiting): Promise<Response> {
  const base = `/s/${encodeURIComponent(seriesId)}/log`;
  if (what.kind === 'entry') {
    return fetch(`${base}/entries`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify({ ...what.entry, sentAt: Date.now() }) });
  }
  return fetch(`${base}/photos/${encodeURIComponent(what.id)}?entry=${encodeURIComponent(what.entryId)}`, { method: 'POST', headers: { 'content-type': 'application/octet-stream' }, body: what.photo });
}

async function sendOne(waiting: Waiting, warn: (text: string) => void): Promise<SendState> {
  const response = await post(waiting).catch(() => null);
  if (response === null || (!response.ok && response.status !== 422)) return 'offline';
  const answer: LogAnswer | null = await response.json().catch(() => null);
  if (answer === null) return 'offline';
  if (answer.ok) {
    for (const { message } of answer.warnings) warn(message);
    await dropWaiting(waiting.key);
  } else await refuseWaiting(waiting, answer.issues.map(({ message, fix }) => `${message} ${fix}`).join(' '));
  return 'sent';
}

let running: Promise<SendState> | null = null;

async function sendAll(seriesId: string, warn: (text: string) => void): Promise<SendState> {
  for (;;) {
    const next = (await listWaiting(seriesId)).find(({ refusal }) => refusal === null);
    if (next === undefined) return 'sent';
    if ((await sendOne(next, warn)) === 'offline') return 'offline';
  }
}

/** One round at a time in this page, and, where the browser has locks, on this device. */
export function sendWaiting(seriesId: string, warn: (text: string) => void): Promise<SendState> {
  const round = (): Promise<SendState> => sendAll(seriesId, warn);
  if (running !== null) return running;
  const locked = async (): Promise<SendState> => ('locks' in navigator ? navigator.locks.request('benchtake-log', round) : round());
  const started = locked().finally(() => {
    running = null;
  });
  running = started;
  return started;
}

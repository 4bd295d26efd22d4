/**
 * The script that lets the page for logging takes open without network. It keeps that page and what it is made of; every other
 * page goes to the network as before. Plain JavaScript, because a browser runs it as it stands.
 */
const SCRIPT = `
const KEPT = 'benchtake-log-1';
const isLogPage = (url) => /^\\/s\\/[^/]+\\/log\\/take$/.test(url.pathname);
const isPiece = (url) => url.pathname.startsWith('/_next/static/') || url.pathname === '/icon.svg';

self.addEventListener('install', () => self.skipWaiting());
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

async function keep(request, response) {
  if (response.ok) await (await caches.open(KEPT)).put(request, response.clone());
  return response;
}

async function fromNetworkFirst(request) {
  const kept = await caches.match(request, { ignoreSearch: true, ignoreVary: true });
  const asked = fetch(request).then((response) => keep(request.url.split('?')[0], response));
  if (!kept) return asked;
  asked.catch(() => undefined);
  const tooLong = new Promise((resolve) => setTimeout(() => resolve(kept), 3000));
  return Promise.race([asked.catch(() => kept), tooLong]);
}

async function fromKeptFirst(request) {
  return (await caches.match(request, { ignoreVary: true })) ?? keep(request, await fetch(request));
}

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (request.mode === 'navigate' && isLogPage(url)) event.respondWith(fromNetworkFirst(request));
  else if (isPiece(url)) event.respondWith(fromKeptFirst(request));
});
`;

export function GET(): Response {
  return new Response(SCRIPT, { headers: { 'content-type': 'text/javascript; charset=utf-8', 'cache-control': 'no-cache', 'service-worker-allowed': '/' } });
}

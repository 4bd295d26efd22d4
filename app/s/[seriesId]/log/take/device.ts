/** What this phone can do: ids, its own name, keeping the page for later, staying awake, a knock in the hand. */

/** A new id; works on plain http addresses of the workshop's network too. */
export function newId(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function remembered(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

export function recall(key: string): string {
  return remembered(`benchtake-log-${key}`) ?? '';
}

export function remember(key: string, value: string): void {
  try {
    localStorage.setItem(`benchtake-log-${key}`, value);
  } catch {
    // A device that remembers nothing asks again.
  }
}

/** A name that stays with this device. */
export function deviceName(): string {
  const known = recall('device');
  if (known !== '') return known;
  const name = `${/iphone|ipad|android/iu.exec(navigator.userAgent)?.[0] ?? 'device'} ${newId().slice(0, 4)}`;
  remember('device', name);
  return name;
}

const KEPT = 'benchtake-log-1';

/** Keeps this page and its pieces, so that it opens without network. False: this browser or this address does not allow it. */
export async function keepPage(): Promise<boolean> {
  if (!('serviceWorker' in navigator) || !('caches' in globalThis)) return false;
  try {
    await navigator.serviceWorker.register('/log-worker.js', { scope: '/' });
    await navigator.serviceWorker.ready;
    await navigator.storage?.persist?.();
    const pieces = performance.getEntriesByType('resource').map(({ name }) => name).filter((name) => new URL(name).pathname.startsWith('/_next/static/'));
    const linked = [...document.querySelectorAll<HTMLScriptElement | HTMLLinkElement>('script[src^="/_next/static/"], link[href^="/_next/static/"]')].map((element) => ('src' in element ? element.src : element.href));
    const cache = await caches.open(KEPT);
    await Promise.all([...new Set([location.origin + location.pathname, ...pieces, ...linked])].map((address) => cache.add(address).catch(() => undefined)));
    return (await cache.match(location.origin + location.pathname)) !== undefined;
  } catch {
    return false;
  }
}

/** Keeps the screen on until it is let go; null where the phone cannot. */
export async function stayAwake(): Promise<WakeLockSentinel | null> {
  try {
    return (await navigator.wakeLock?.request('screen')) ?? null;
  } catch {
    return null;
  }
}

export function knock(pattern: number | number[]): void {
  navigator.vibrate?.(pattern);
}

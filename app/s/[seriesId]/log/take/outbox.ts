/** What waits on this device to be sent. Kept in IndexedDB, so that a reload, a kill or a flat battery loses nothing. */

/** An entry as it is sent, but for the moment of sending. */
export type Unsent = Readonly<Record<string, unknown>> & { readonly id: string };

export interface Waiting {
  /** Order on this device; sending keeps it. */
  readonly key: number;
  readonly seriesId: string;
  readonly what: { readonly kind: 'entry'; readonly entry: Unsent } | { readonly kind: 'photo'; readonly id: string; readonly entryId: string; readonly photo: Blob };
  /** For the list on the page: `Take of Strip the frame: good`. */
  readonly words: string;
  /** Why it was refused; null: it is still to be sent. */
  readonly refusal: string | null;
}

export type NewWaiting = Omit<Waiting, 'key' | 'refusal'>;

const DATABASE = 'benchtake-log';
const STORE = 'waiting';

function settle<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('The store of this device failed.')));
  });
}

let opened: Promise<IDBDatabase> | null = null;

function open(): Promise<IDBDatabase> {
  opened ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(DATABASE, 1);
    request.addEventListener('upgradeneeded', () => request.result.createObjectStore(STORE, { keyPath: 'key', autoIncrement: true }));
    request.addEventListener('success', () => resolve(request.result));
    request.addEventListener('error', () => reject(request.error ?? new Error('This device keeps no entries.')));
  }).catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}

/** Runs one transaction and answers once it is on disk. */
async function inStore<T>(mode: 'readonly' | 'readwrite', work: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  const database = await open();
  const transaction = database.transaction(STORE, mode, { durability: mode === 'readwrite' ? 'strict' : 'default' });
  const ended = new Promise<void>((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve());
    transaction.addEventListener('abort', () => reject(transaction.error ?? new Error('The store of this device failed.')));
  });
  const [value] = await Promise.all([settle(work(transaction.objectStore(STORE))), ended]);
  return value;
}

/** Keeps something to be sent; resolves when it is safe. @throws when the device has no room or keeps nothing */
export async function addWaiting(waiting: NewWaiting): Promise<void> {
  await inStore('readwrite', (store) => store.add({ ...waiting, refusal: null }));
}

/** All that waits on this device for a series, oldest first. */
export async function listWaiting(seriesId: string): Promise<readonly Waiting[]> {
  const all: Waiting[] = await inStore<Waiting[]>('readonly', (store) => store.getAll());
  return all.filter((one) => one.seriesId === seriesId);
}

export async function dropWaiting(key: number): Promise<void> {
  await inStore('readwrite', (store) => store.delete(key));
}

/** Keeps it on the device with the reason, out of the way of what comes after. */
export async function refuseWaiting(waiting: Waiting, refusal: string): Promise<void> {
  await inStore('readwrite', (store) => store.put({ ...waiting, refusal }));
}

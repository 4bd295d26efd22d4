/** Databases for tests: one migrated base file, copied for each test. */
import { cp, mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { openStorage } from '@/lib/storage';
import type { Storage } from '@/lib/storage';
import { migrateDatabase } from '@/lib/storage/migrate.mjs';

export interface TestDatabase {
  readonly url: string;
  readonly file: string;
  readonly storage: Storage;
}

/** A folder with the migrated base file. */
export async function makeFolder(): Promise<{ readonly path: string; readonly copyBase: () => Promise<TestDatabase>; readonly remove: () => Promise<void> }> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'benchtake-storage-'));
  const base = path.join(folder, 'base.db');
  await migrateDatabase({ url: `file:${base}` });
  const opened: Storage[] = [];
  let copies = 0;
  return {
    path: folder,
    copyBase: async () => {
      copies += 1;
      const file = path.join(folder, `copy-${copies}.db`);
      await cp(base, file);
      const url = pathToFileURL(file).href;
      const storage = await openStorage(url);
      opened.push(storage);
      return { url, file, storage };
    },
    remove: async () => {
      for (const storage of opened) await storage.close();
      await rm(folder, { recursive: true });
    },
  };
}

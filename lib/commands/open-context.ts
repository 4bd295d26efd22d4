import { randomUUID } from 'node:crypto';
import { openStorage } from '@/lib/storage';
import { instant } from '@/lib/units';
import type { CommandContext } from './context';

/**
 * The context of the running program: its database, the clock of this machine, random ids.
 * @throws Error when there is no database, as `openStorage` says.
 */
export async function openContext(): Promise<CommandContext> {
  return { storage: await openStorage(), now: () => instant(Date.now()), newId: () => randomUUID() };
}

import type { Result } from '@/lib/result';
import type { LogPhoto } from '@/lib/storage';
import type { CommandContext } from './context';

/**
 * Keeps a photo of an entry, once. A photo that cannot be kept leaves its entry as it is.
 * Fails with `no-such-entry`, `photo-empty`, `photo-too-heavy`, `photo-too-large` or `photo-unreadable`.
 */
export async function keepPhoto(context: CommandContext, seriesId: string, entryId: string, photoId: string, bytes: Uint8Array): Promise<Result<LogPhoto>> {
  return context.storage.keepLogPhoto(seriesId, { entryId, id: photoId, bytes }, context.now());
}

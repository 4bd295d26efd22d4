/** Photos of log entries: a row each, the pictures in files beside the database. */
import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fail, issue, ok, type Result } from '@/lib/result';
import type { Instant } from '@/lib/units';
import { readInstant, writeInstant } from './column';
import type { Db } from './connection';
import type { LogPhotoModel } from './generated/models';
import { readPhoto } from './photo-image';

export interface LogPhoto {
  readonly id: string;
  readonly entryId: string;
  readonly receivedAt: Instant;
  /** Pixels of the kept picture, and its bytes. */
  readonly width: number;
  readonly height: number;
  readonly bytes: number;
}

export type PhotoSize = 'large' | 'small';

const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 32);

/** Names are digests: what comes from outside never becomes a path. */
function fileOf(folder: string, seriesId: string, photoId: string, size: PhotoSize): string {
  return path.join(folder, digest(seriesId), `${digest(photoId)}-${size}.jpg`);
}

function readRow({ id, entryId, receivedAt, width, height, bytes }: LogPhotoModel): LogPhoto {
  return { id, entryId, receivedAt: readInstant(receivedAt), width, height, bytes };
}

/** Written under another name first, so that a backup never sees half a picture. */
async function writeWhole(file: string, bytes: Buffer): Promise<void> {
  await mkdir(path.dirname(file), { recursive: true });
  const part = `${file}.${process.pid}.part`;
  await writeFile(part, bytes);
  await rename(part, file);
}

/**
 * Keeps a photo of an entry, once: one that comes a second time is left alone.
 * Fails with `no-such-entry` and with what `readPhoto` refuses.
 */
export async function keepPhoto(db: Db, folder: string, photo: { readonly seriesId: string; readonly entryId: string; readonly id: string; readonly bytes: Uint8Array; readonly at: Instant }): Promise<Result<LogPhoto>> {
  const { seriesId, entryId, id, at } = photo;
  const known = await db.logPhoto.findUnique({ where: { seriesId_id: { seriesId, id } } });
  if (known) return ok(readRow(known));
  const entry = await db.logEntry.findUnique({ where: { seriesId_id: { seriesId, id: entryId } }, select: { id: true } });
  if (!entry) return fail([issue('no-such-entry', 'The entry that this photo belongs to is not in the log.', 'Send the entry first.', { path: ['entryId'] })]);
  const image = await readPhoto(photo.bytes);
  if (!image.ok) return image;
  const { large, small, width, height } = image.value;
  await writeWhole(fileOf(folder, seriesId, id, 'large'), large);
  await writeWhole(fileOf(folder, seriesId, id, 'small'), small);
  const row = { seriesId, id, entryId, receivedAt: writeInstant(at), width, height, bytes: large.length };
  return ok(readRow(await db.logPhoto.upsert({ where: { seriesId_id: { seriesId, id } }, create: row, update: {} })));
}

/** Photos of a series, oldest first. */
export async function listPhotos(db: Db, seriesId: string): Promise<readonly LogPhoto[]> {
  return (await db.logPhoto.findMany({ where: { seriesId }, orderBy: [{ receivedAt: 'asc' }, { id: 'asc' }] })).map(readRow);
}

/** The bytes of a kept photo; null when there is none of that id, or its file is gone. */
export async function loadPhoto(db: Db, folder: string, seriesId: string, id: string, size: PhotoSize): Promise<Buffer | null> {
  const row = await db.logPhoto.findUnique({ where: { seriesId_id: { seriesId, id } }, select: { id: true } });
  if (!row) return null;
  return readFile(fileOf(folder, seriesId, id, size)).catch(() => null);
}

/** Takes the pictures of a removed series away. */
export async function removePhotos(folder: string, seriesId: string): Promise<void> {
  await rm(path.dirname(fileOf(folder, seriesId, '', 'large')), { recursive: true, force: true });
}

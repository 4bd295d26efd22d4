/** From what a phone sends to a picture that can be kept: read, turned upright, made smaller, without anything the camera wrote into it. */
import { fail, issue, ok, type Result } from '@/lib/result';
import sharp from 'sharp';

const PHOTO_LIMITS = { bytes: 30_000_000, side: 20_000, pixels: 120_000_000 } as const;
const LARGE = { side: 2560, quality: 84 } as const;
const SMALL = { side: 400, quality: 76 } as const;
/** What sharp reads and phones write. */
const FORMATS: readonly string[] = ['jpeg', 'png', 'webp', 'heif', 'avif', 'gif', 'tiff'];

export interface PhotoImage {
  /** JPEG without place, time or camera data. */
  readonly large: Buffer;
  readonly small: Buffer;
  readonly width: number;
  readonly height: number;
}

const MB = 1_000_000;

function refuse(code: string, message: string, fix: string): Result<never> {
  return fail([issue(code, message, fix, { path: ['photo'] })]);
}

/** Fails with `photo-empty`, `photo-too-heavy`, `photo-too-large` or `photo-unreadable`; the log entry is kept all the same. */
export async function readPhoto(bytes: Uint8Array): Promise<Result<PhotoImage>> {
  if (bytes.length === 0) return refuse('photo-empty', 'The photo is empty.', 'Take it again.');
  if (bytes.length > PHOTO_LIMITS.bytes) {
    return refuse('photo-too-heavy', `The photo has ${Math.round(bytes.length / MB)} MB; at most ${PHOTO_LIMITS.bytes / MB} MB are kept.`, 'Send it smaller: the phone can share it at a lower size.');
  }
  try {
    const image = sharp(bytes, { limitInputPixels: false, failOn: 'error' });
    const { format, width = 0, height = 0 } = await image.metadata();
    if (!FORMATS.includes(format)) return refuse('photo-unreadable', `A file of the kind ${format} is not a photo.`, 'Send a JPEG, PNG or WebP picture.');
    if (width > PHOTO_LIMITS.side || height > PHOTO_LIMITS.side || width * height > PHOTO_LIMITS.pixels) {
      return refuse('photo-too-large', `The photo is ${width} × ${height} px; at most ${PHOTO_LIMITS.side} px a side and ${PHOTO_LIMITS.pixels / MB} million in all are kept.`, 'Cut it, or send it smaller.');
    }
    const shrink = (side: number, quality: number) =>
      sharp(bytes, { failOn: 'error' }).rotate().resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true }).flatten({ background: '#ffffff' }).jpeg({ quality }).toBuffer({ resolveWithObject: true });
    const large = await shrink(LARGE.side, LARGE.quality);
    const small = await shrink(SMALL.side, SMALL.quality);
    return ok({ large: large.data, small: small.data, width: large.info.width, height: large.info.height });
  } catch {
    return refuse('photo-unreadable', 'The file cannot be read as a picture; it is damaged, or no photo.', 'Take the photo again and send it as JPEG.');
  }
}

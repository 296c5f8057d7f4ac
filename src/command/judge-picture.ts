import { imageSize } from 'image-size';
import type { PictureFile } from '../source/index.ts';
import { readSvg } from './read-svg.ts';

/** Larger pictures make a sheet slow on a tablet, and no paper shows that much: 5 MB. */
export const largestPicture = 5 * 1024 * 1024;

/** Endings of pictures that a sheet can show. */
export const isPicture = (path: string): boolean => /\.(svg|png|jpe?g|webp)$/i.test(path);

/** What kind of picture the content of a file is, whatever its name says. Never throws. */
export function judgePicture(path: string, bytes: Uint8Array): PictureFile {
  if (bytes.length > largestPicture) return tooLarge(path, bytes.length);
  if (bytes.length === 0) return { path, state: 'broken', reason: 'it is empty' };
  return /\.svg$/i.test(path) ? { path, ...readSvg(bytes) } : { path, ...readPixels(bytes) };
}

export function tooLarge(path: string, bytes: number): PictureFile {
  return { path, state: 'large', bytes, limit: largestPicture };
}

type Judged = ReturnType<typeof readSvg>;

function readPixels(bytes: Uint8Array): Judged {
  try {
    const { width, height, type, orientation } = imageSize(bytes);
    if (!shownTypes.has(type ?? '')) {
      return { state: 'broken', reason: `its content is of the type ${type}` };
    }
    if (!(width > 0 && height > 0)) return { state: 'broken', reason: 'it has no width or height' };
    // A camera held upright writes a lying picture and, from 5 on, that it must be turned by a quarter.
    const isTurned = orientation !== undefined && orientation >= 5;
    return { state: 'fit', size: isTurned ? { width: height, height: width } : { width, height } };
  } catch {
    return { state: 'broken', reason: 'its content is no png, jpg or webp' };
  }
}

const shownTypes: ReadonlySet<string> = new Set(['png', 'jpg', 'webp']);

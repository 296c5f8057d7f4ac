import type { UnreadableFile } from '../source/index.ts';

/** Texts larger than this are no procedures; reading on would only use up memory. */
export const largestText = 8 * 1024 * 1024;

export const tooLong = (size: number): Omit<UnreadableFile, 'path'> => ({
  reason: `it is ${Math.round(size / 1024 / 1024)} MB; a text of the manual may have 8 MB`,
  advice: 'Split it into several, or take it out of the manual.',
});

/** The bytes of a file as a text of the manual, or why they are none. */
export function textIn(bytes: Uint8Array): { text: string } | Omit<UnreadableFile, 'path'> {
  if (bytes.length > largestText) return tooLong(bytes.length);
  try {
    return { text: decoder.decode(bytes) };
  } catch {
    return {
      reason: 'it is not UTF-8 text',
      advice: 'Save it again as plain text in UTF-8, or take it out of the manual.',
    };
  }
}

/** A byte order mark stays in the text, so that offsets are those of the file and it is written back as it was. */
const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

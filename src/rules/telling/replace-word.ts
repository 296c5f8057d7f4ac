import type { Fix, Place } from '../../../schemas/finding.ts';
import type { Examined } from '../rule.ts';

/** Puts one word for another where there is one to put, and only where the file has the old word at exactly that place. */
export function replaceWord(
  examined: Examined,
  place: Place,
  kind: Fix['kind'],
  written: string,
  instead: string | undefined,
): Fix | undefined {
  if (instead === undefined) return undefined;
  const start = place.start.offset;
  const end = start + written.length;
  if (examined.text(place.file).slice(start, end) !== written) return undefined;
  if (end > place.end.offset) return undefined;
  return {
    kind,
    title: `Write “${instead}” instead of “${written}”`,
    edits: [{ file: place.file, start, end, text: instead }],
  };
}

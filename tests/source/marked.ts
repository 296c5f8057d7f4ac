import type { Place } from '../../schemas/finding.ts';

/**
 * A text in which `«` and `»` stand around the places that are to be found, without these marks, and the
 * marked stretches as offsets in it.
 */
export function marked(text: string): { text: string; spans: { start: number; end: number }[] } {
  const spans: { start: number; end: number }[] = [];
  let plain = '';
  let start = 0;
  for (const piece of text.split(/([«»])/)) {
    if (piece === '«') start = plain.length;
    else if (piece === '»') spans.push({ start, end: plain.length });
    else plain += piece;
  }
  return { text: plain, spans };
}

/** A place as the offsets that `marked` gives. */
export function spanOf({ start, end }: Place): { start: number; end: number } {
  return { start: start.offset, end: end.offset };
}

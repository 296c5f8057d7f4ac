import type { Place } from '../../schemas/finding.ts';
import type { Locator } from './place.ts';

/**
 * The place of a stretch of a written value, `start` and `end` counted in the value; the whole place where
 * the value does not stand in the file as it is (quotes with escapes, several lines).
 */
export function placeWithin(
  locator: Locator,
  place: Place,
  written: string,
  stretch: { readonly start: number; readonly end: number },
): Place {
  if (stretch.end <= stretch.start) return place;
  const quote = /["']/.test(locator.text[place.start.offset] ?? '') ? 1 : 0;
  const from = place.start.offset + quote;
  if (!locator.text.startsWith(written, from)) return place;
  return locator.place(from + stretch.start, from + stretch.end);
}

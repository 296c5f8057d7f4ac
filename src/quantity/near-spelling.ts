import { slipsBetween } from '../source/index.ts';

/** The known names nearest to a text, at most two slips away (one for short texts), in their given order. */
export function nearestTo(text: string, known: readonly string[]): readonly string[] {
  const allowed = text.length <= 2 ? 0 : text.length <= 4 ? 1 : 2;
  const near = known
    .filter((name) => Math.abs(name.length - text.length) <= allowed)
    .map((name) => ({ name, slips: slipsBetween(text, name) }));
  const fewest = Math.min(allowed, ...near.map(({ slips }) => slips));
  return near.filter(({ slips }) => slips === fewest).map(({ name }) => name);
}

import { blank, blanked, type RunningText } from './running-text.ts';
import type { Sentence } from './sentences.ts';

/**
 * Words in a sentence, counted as ASD-STE100 counts them (section 8, from memory): a hyphenated group, a figure, a unit,
 * a quoted title count one each; text in brackets is a sentence of its own. The longest of these is given.
 */
export function wordsIn({ text, stretches }: RunningText, { start, end }: Sentence): number {
  const titles = stretches
    .filter(({ kind }) => kind !== 'action')
    .map((one) => ({ start: one.start - start, end: one.end - start }))
    .filter((one) => one.end > 0 && one.start < end - start)
    .map((one) => ({ start: Math.max(0, one.start), end: Math.min(end - start, one.end) }));
  const words = blanked(text.slice(start, end), titles).replace(/"[^"]*"|“[^”]*”/g, blank);
  const inside = [...words.matchAll(/\(([^()]*)\)/g)].map(([, part = '']) => part);
  const outside = words.replace(/\([^()]*\)/g, ' ');
  return Math.max(...[outside, ...inside].map(count));
}

const count = (words: string): number =>
  words.split(/[\s—–]+/).filter((word) => word.includes(blank) || /[\p{L}\p{N}]/u.test(word))
    .length;

import type { Message } from 'sarif';
import { printable } from '../printable.ts';

/** Words as a plain text message of SARIF 2.1.0 (3.11). */
export const messageOf = (...sentences: readonly string[]): Message => ({
  text: sarifText(sentences.map(ended).join(' ')),
});

/**
 * Text without placeholders and links: braces are doubled as 3.11.5 asks, and what an author wrote between brackets
 * is kept from being a link as 3.11.6 has them.
 */
export const sarifText = (text: string): string =>
  printable(text).replaceAll(/[{}]/g, '$&$&').replaceAll('](', '] (');

const ended = (sentence: string): string =>
  /[.!?:…]$/.test(sentence) || sentence === '' ? sentence : `${sentence}.`;

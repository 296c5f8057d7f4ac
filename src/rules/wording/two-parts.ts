import { sentence } from './lists.ts';

/** What is wrong, up to the first full stop or semicolon, and what to do, which is the rest. */
export function twoParts(words: string): { message: string; help: string | undefined } {
  const end = /[.;:] (?=\S)/.exec(words);
  if (end === null) return { message: words.replace(/\.$/, ''), help: undefined };
  return { message: words.slice(0, end.index), help: sentence(words.slice(end.index + 2)) };
}

import { sentence } from './lists.ts';

/** What is wrong, up to the first full stop or semicolon, and what to do, which is the rest. */
export function twoParts(words: string): { message: string; help: string | undefined } {
  // The place shows which stage it is.
  const bare = words.replace(/^Stage \d+: /, '');
  const end = /[.;:] (?=\S)/.exec(bare);
  if (end === null) return { message: bare.replace(/\.$/, ''), help: undefined };
  return { message: bare.slice(0, end.index), help: sentence(bare.slice(end.index + 2)) };
}

import type { PhrasingContent } from 'mdast';
import { printable } from '../printable.ts';

/** Our own sentences, in which what stands between backticks is code. None of an author's words takes effect. */
export function wordsIn(text: string): PhrasingContent[] {
  return printable(text)
    .split(/`([^`]*)`/)
    .flatMap((part, i): PhrasingContent[] => {
      if (part === '') return [];
      return i % 2 === 1 ? [{ type: 'inlineCode', value: part }] : [plain(part)];
    });
}

/**
 * Words as they are. The serialiser escapes what Markdown would take for its own; but hosts of code make calls and
 * links of `@name`, `#12` and addresses in any text, and no escape stops them: an invisible joiner (U+2060) does.
 */
export const plain = (text: string): PhrasingContent => ({
  type: 'text',
  value: printable(text).replaceAll(taken, '$&\u2060'),
});

const taken = /[@#](?=[\p{L}\p{N}_])|:(?=\/\/)|www(?=\.)/giu;

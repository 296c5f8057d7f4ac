import type { ElementContent } from 'hast';
import { h } from 'hastscript';

/** A word of more letters than this is wider than a narrow column. */
const longest = 28;
/** So many stay together where it is broken. */
const piece = 12;

/** Content with places in its long words at which a line may end. The text stays as it is. */
export function breakLongWords(content: readonly ElementContent[]): ElementContent[] {
  return content.flatMap((node): ElementContent[] => {
    if (node.type === 'text') return breakText(node.value);
    if (node.type !== 'element' || node.tagName === 'svg') return [node];
    return [{ ...node, children: breakLongWords(node.children) }];
  });
}

/** The same for a running line of a printed page, which knows no other way to break a word: with spaces of no width. */
export function breakLongWordsIn(text: string): string {
  return pieces(text).join('\u200b');
}

function breakText(text: string): ElementContent[] {
  return pieces(text).flatMap((value, i) => {
    const words = { type: 'text' as const, value };
    return i === 0 ? [words] : [h('wbr'), words];
  });
}

/** The stretches of a text between which a long word may be broken. */
function pieces(text: string): string[] {
  const found = [''];
  for (const [i, part] of text.split(longWord).entries()) {
    const [first = '', ...others] = i % 2 === 0 ? [part] : (part.match(letters) ?? []);
    found.push((found.pop() ?? '') + first, ...others);
  }
  return found;
}

/** Scripts without spaces end a line where they like, by rules of their own. */
const letter = '[\\p{Script=Latin}\\p{Script=Greek}\\p{Script=Cyrillic}\\p{M}\\p{N}\\p{P}]';
const longWord = new RegExp(`(${letter}{${longest + 1},})`, 'u');
const letters = new RegExp(`(?:\\P{M}\\p{M}*){1,${piece}}|\\p{M}+`, 'gu');

import type { ElementContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { breakLongWords } from './long-words.ts';

const writer = unified().use(rehypeStringify).freeze();

/** Content as HTML; every text and attribute is escaped. */
export function toHtml(content: readonly ElementContent[]): string {
  return writer.stringify({ type: 'root', children: breakLongWords(content) });
}

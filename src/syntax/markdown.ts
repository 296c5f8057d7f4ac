import type { Nodes, Root } from 'mdast';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import { type Processor, unified } from 'unified';
import { directiveTokens, moveTokens } from './directive-tokens.ts';
import { type GfmPart, gfmPartsFor } from './gfm-parts.ts';

const processors = new Map<string, Processor<Root>>();

/** One for each set of parts that texts turn out to need. */
function processorFor(text: string): Processor<Root> {
  const parts = gfmPartsFor(text);
  const key = parts.map(({ name }) => name).join(' ');
  const known = processors.get(key);
  if (known !== undefined) return known;
  const made = unified()
    .use(remarkParse)
    .use(gfm, parts)
    .use(remarkFrontmatter, ['yaml'])
    .use(remarkDirective)
    .use(directiveTokens)
    .freeze();
  processors.set(key, made);
  return made;
}

function gfm(this: Processor, parts: readonly GfmPart[]): void {
  const data = this.data();
  data.micromarkExtensions = [
    ...(data.micromarkExtensions ?? []),
    ...parts.map(({ syntax }) => syntax),
  ];
  data.fromMarkdownExtensions = [
    ...(data.fromMarkdownExtensions ?? []),
    ...parts.map(({ tree }) => tree),
  ];
}

const byteOrderMark = '\uFEFF';

/** Markdown to its tree. Every node has its position; offsets count in UTF-16 units of the whole text. */
export function parseMarkdown(text: string): Root {
  const tree = processorFor(text).parse(text);
  settle(tree, text.startsWith(byteOrderMark) ? 1 : 0);
  return tree;
}

/**
 * Moves all positions by the byte order mark that the parser leaves out of its count, and gives the
 * nodes that have none (addresses found in text) that of their parent.
 */
function settle(root: Root, shift: number): void {
  const open: Nodes[] = [root];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (shift !== 0 && node.position !== undefined) {
      const { start, end } = node.position;
      node.position = {
        start: { ...start, offset: (start.offset ?? 0) + shift },
        end: { ...end, offset: (end.offset ?? 0) + shift },
      };
      moveTokens(node, shift);
    }
    if (!('children' in node)) continue;
    for (const child of node.children) {
      // Shared with the parent, whose own is settled already: taken back by the shift that is still to come.
      if (child.position === undefined && node.position !== undefined) {
        const { start, end } = node.position;
        child.position = {
          start: { ...start, offset: (start.offset ?? 0) - shift },
          end: { ...end, offset: (end.offset ?? 0) - shift },
        };
      }
      open.push(child);
    }
  }
}

import GithubSlugger from 'github-slugger';
import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { toHast } from 'mdast-util-to-hast';
import { toString as textOf } from 'mdast-util-to-string';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { toHtml } from '../../src/render/to-html.ts';

export interface Guide {
  readonly html: string;
  /** Headings of the chapters, with the ids that they have in the text. */
  readonly chapters: readonly { readonly id: string; readonly title: string }[];
}

const processor = unified().use(remarkParse).use(remarkGfm).freeze();

/** The chapters of the guide as one page. Wide examples and tables scroll inside themselves. */
export function guideOf(texts: readonly string[]): Guide {
  const slugger = new GithubSlugger();
  const chapters: { id: string; title: string }[] = [];
  const content = texts.flatMap((text): ElementContent[] => {
    const tree = processor.parse(text);
    visit(tree, 'heading', (heading) => {
      const title = textOf(heading);
      const id = `guide-${slugger.slug(title)}`;
      heading.data = { hProperties: { id } };
      if (heading.depth === 2) chapters.push({ id, title });
    });
    const root = toHast(tree);
    return root.type === 'root' ? contentOf(root).map(scrolling) : [];
  });
  return { html: toHtml(content), chapters };
}

const contentOf = (root: Root): ElementContent[] =>
  root.children.filter((child) => child.type !== 'doctype');

/** What may be wider than the page can be reached with the keyboard. */
function scrolling(node: ElementContent): ElementContent {
  if (node.type !== 'element') return node;
  if (node.tagName === 'pre') {
    return { ...node, properties: { ...node.properties, tabIndex: 0 } };
  }
  return node.tagName === 'table' ? wide(node) : node;
}

const wide = (table: Element): Element =>
  h('div.wide', { role: 'group', ariaLabel: 'Table', tabIndex: 0 }, [table]);

import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Paragraph, Root } from 'mdast';
import type {} from 'mdast-util-to-hast';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { sheetMarkup } from '../render/index.ts';

export interface SheetPlace {
  /** Address of the published manual; undefined where there is none. */
  readonly published: string | undefined;
  readonly isDraft: boolean;
}

/** Puts the sheet of a procedure in the place of its text. Front matter stays, for plugins that read it. */
export function sheetInTree(
  tree: Root,
  one: LinkedProcedure,
  manual: LinkedManual,
  { published, isDraft }: SheetPlace,
): void {
  const base = published === undefined ? nowhere : published.replace(/\/?$/, '/');
  const markup = sheetMarkup(one, manual, base);
  const draft = isDraft ? [h('p.draft-line', 'Draft, not for work.')] : [];
  const sheet: Paragraph = {
    type: 'paragraph',
    children: [],
    data: {
      hName: 'div',
      hProperties: { className: ['tallybolt'] },
      hChildren: [...draft, ...(published === undefined ? markup.flatMap(withoutLinks) : markup)],
    },
  };
  tree.children = [...tree.children.filter(({ type }) => type === 'yaml'), sheet];
}

/** Where links to other pages of the manual lead until they are taken out. */
const nowhere = 'unpublished:';

/** The words of links that lead nowhere; figures keep their path in the manual. */
function withoutLinks(node: ElementContent): ElementContent[] {
  if (node.type !== 'element') return [node];
  const children = node.children.flatMap(withoutLinks);
  const { href, src } = node.properties;
  if (node.tagName === 'a' && typeof href === 'string' && href.startsWith(nowhere)) return children;
  const properties =
    typeof src === 'string' && src.startsWith(nowhere)
      ? { ...node.properties, src: src.slice(nowhere.length) }
      : node.properties;
  return [{ ...node, properties, children }];
}

import type { Nodes } from 'mdast';

/** The words of some Markdown on one line: how it is wrapped, marked and spaced does not count, where its links lead does. */
export function plainWords(node: Nodes): string {
  return onOneLine(textOf(node));
}

/** Text with every run of white space as one blank. */
export const onOneLine = (text: string): string => text.replace(/\s+/g, ' ').trim();

export const samePlainWords = (a: string, b: string): boolean => onOneLine(a) === onOneLine(b);

function textOf(node: Nodes): string {
  if (node.type === 'break') return ' ';
  if ('value' in node) return node.value;
  if (node.type === 'image') return ` [${node.alt ?? ''} ${node.url}] `;
  if (!('children' in node)) return '';
  const inner = node.children.map((child: Nodes) => textOf(child)).join(isFlow(node) ? ' ' : '');
  return node.type === 'link' ? `${inner} [${node.url}]` : inner;
}

/** Whether what stands inside stands on lines or in cells of its own. */
const isFlow = (node: Nodes): boolean =>
  !('children' in node) ||
  ![
    'paragraph',
    'heading',
    'tableCell',
    'textDirective',
    'link',
    'emphasis',
    'strong',
    'delete',
  ].includes(node.type);

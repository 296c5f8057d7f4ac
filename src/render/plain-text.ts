import type { ElementContent } from 'hast';

/** The words of some content, with a space where one element ends and another begins on a line of its own. */
export function plainText(content: readonly ElementContent[]): string {
  return content.map(textOf).join('').replace(/\s+/g, ' ').trim();
}

const blocks = new Set(['p', 'div', 'li', 'ul', 'ol', 'tr', 'td', 'th', 'aside', 'section']);

function textOf(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  if (node.type !== 'element') return '';
  const inner = node.children.map(textOf).join('');
  return blocks.has(node.tagName) ? ` ${inner} ` : inner;
}

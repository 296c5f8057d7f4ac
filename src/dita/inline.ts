import type { Element, ElementContent } from 'hast';
import { type XmlNode, xml } from '../render/index.ts';
import { targetOf } from './address.ts';
import { classOf, idOf, productAt, textAttribute } from './markup.ts';
import type { Topic } from './topic.ts';

/** What may stand in the place: links not in links or titles, pictures only in running text. */
interface Allowed {
  readonly links: boolean;
  readonly pictures: boolean;
}

const all: Allowed = { links: true, pictures: true };
export const plainOnly: Allowed = { links: false, pictures: false };
/** In a safety message. */
export const wordsOnly: Allowed = { links: true, pictures: false };

/** Words of a sheet as words of a topic. What stands on lines of its own there runs on here. */
export function inline(
  nodes: readonly ElementContent[],
  topic: Topic,
  allowed: Allowed = all,
): XmlNode[] {
  return nodes.flatMap((node) => inlineNode(node, topic, allowed));
}

const marks: Readonly<Record<string, string>> = {
  strong: 'b',
  em: 'i',
  del: 'line-through',
  sub: 'sub',
  sup: 'sup',
};

/** With one blank for each line end and the blanks around it. */
function onOneLine(text: string): string {
  const lines = text.split('\n');
  const last = lines.length - 1;
  if (last === 0) return text;
  return lines
    .map((line, i) => (i === 0 ? line.trimEnd() : i === last ? line.trimStart() : line.trim()))
    .filter((line, i) => line !== '' || i === 0 || i === last)
    .join(' ');
}

function inlineNode(node: ElementContent, topic: Topic, allowed: Allowed): XmlNode[] {
  if (node.type === 'text') return [onOneLine(node.value)];
  if (node.type !== 'element') return [];
  const mark = marks[node.tagName];
  if (mark !== undefined)
    return [xml(mark, {}, inline(node.children, topic, { ...allowed, pictures: false }))];
  switch (node.tagName) {
    case 'a':
      return link(node, topic, allowed);
    case 'img':
      return allowed.pictures ? [picture(node, topic)] : [textAttribute(node, 'alt')];
    case 'svg':
      return [textAttribute(node, 'ariaLabel')];
    case 'input':
      return ['____'];
    case 'br':
      return [' '];
    case 'code':
      return [xml('codeph', {}, inline(node.children, topic, plainOnly))];
    case 'span': {
      const product = productAt(node, topic);
      const inner = inline(node.children, topic, allowed);
      // A number in a figure, which the sheet prints in a circle.
      if (classOf(node) === 'callout') return ['(', ...inner, ')'];
      return product === undefined ? inner : [xml('ph', { product }, inner)];
    }
    default:
      return [' ', ...inline(node.children, topic, allowed), ' '];
  }
}

function link(node: Element, topic: Topic, allowed: Allowed): XmlNode[] {
  const target = allowed.links ? targetOf(textAttribute(node, 'href'), topic) : undefined;
  if (target === undefined) return inline(node.children, topic, allowed);
  const inner = inline(node.children, topic, { ...allowed, links: false });
  return [xml('xref', { ...target }, inner)];
}

/** The same without blanks at its ends. */
export function trimmed(nodes: readonly XmlNode[]): XmlNode[] {
  const words = nodes.filter((node) => typeof node !== 'string' || node !== '');
  return words.flatMap((node, i): XmlNode[] => {
    if (typeof node !== 'string') return [node];
    const start = i === 0 ? node.trimStart() : node;
    const text = i === words.length - 1 ? start.trimEnd() : start;
    return text === '' ? [] : [text];
  });
}

/** A picture of the manual, with the words that stand for it. */
export function picture(node: Element, topic: Topic, placement?: 'break'): XmlNode {
  const href = textAttribute(node, node.tagName === 'img' ? 'src' : 'href');
  const alt = textAttribute(node, 'alt') || textAttribute(node, 'ariaLabel');
  const words = alt === '' ? [] : [xml('alt', {}, [alt])];
  return xml('image', { href: topic.up + href, placement, id: idOf(node) }, words);
}

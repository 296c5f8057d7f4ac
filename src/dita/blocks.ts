import type { Element, ElementContent } from 'hast';
import { type XmlNode, xml } from '../render/index.ts';
import { inline, picture, plainOnly, trimmed } from './inline.ts';
import { classOf, firstOf, idOf, productAt } from './markup.ts';
import { tableFrom } from './table.ts';
import type { Topic } from './topic.ts';

const blockNames: ReadonlySet<string> = new Set(
  'p ul ol li blockquote pre table figure div section aside hr h2 h3'.split(' '),
);

/** Parts of a sheet as blocks of a topic. Words that stand between blocks become paragraphs. */
export function blocks(nodes: readonly ElementContent[], topic: Topic): XmlNode[] {
  const out: XmlNode[] = [];
  let words: ElementContent[] = [];
  const endWords = (): void => {
    const inner = inline(words, topic);
    if (inner.some((node) => typeof node !== 'string' || node.trim() !== ''))
      out.push(xml('p', {}, inner));
    words = [];
  };
  for (const node of nodes) {
    if (node.type !== 'element' || !blockNames.has(node.tagName)) words.push(node);
    else {
      endWords();
      out.push(...block(node, topic));
    }
  }
  endWords();
  return out;
}

function block(node: Element, topic: Topic): XmlNode[] {
  const product = productAt(node, topic);
  const outputclass = classOf(node);
  switch (node.tagName) {
    case 'p':
    case 'h2':
    case 'h3':
      return [xml('p', { id: idOf(node), product, outputclass }, inline(node.children, topic))];
    case 'ul':
    case 'ol': {
      const items = node.children.flatMap((child) =>
        child.type === 'element' ? [item(child, topic)] : [],
      );
      return items.length === 0 ? [] : [xml(node.tagName, { product, outputclass }, items)];
    }
    case 'blockquote': {
      // A quotation may not stand directly in another.
      const inner = blocks(node.children, topic).map((child) =>
        typeof child !== 'string' && child.name === 'lq' ? xml('div', {}, [child]) : child,
      );
      return [xml('lq', {}, inner)];
    }
    case 'pre':
      return [xml('pre', { 'xml:space': 'preserve' }, [textIn(node)])];
    case 'table':
      return tableFrom(node, topic);
    case 'figure':
      return [figure(node, topic)];
    case 'hr':
      return [];
    default: {
      const inner = blocks(node.children, topic);
      const isKept = product !== undefined || outputclass?.startsWith('box');
      return isKept && inner.length > 0 ? [xml('div', { product, outputclass }, inner)] : inner;
    }
  }
}

function item(node: Element, topic: Topic): XmlNode {
  const attributes = { id: idOf(node), product: productAt(node, topic) };
  // The list counts the entries of a key itself.
  const content = node.children.filter(
    (child) => child.type !== 'element' || classOf(child) !== 'callout',
  );
  const isFlat = content.every(
    (child) => child.type !== 'element' || !blockNames.has(child.tagName),
  );
  const inner = isFlat ? trimmed(inline(content, topic)) : blocks(content, topic);
  return xml('li', attributes, inner);
}

/** The picture itself, its caption as its title, and the key to its numbers. */
function figure(node: Element, topic: Topic): XmlNode {
  const caption = firstOf(node.children, ['figcaption']);
  const image = firstOf(node.children, ['img', 'image']);
  const drawn = image === undefined ? firstOf(node.children, ['svg']) : undefined;
  const key = firstOf(node.children, ['ol']);
  return xml('fig', { id: idOf(node), product: productAt(node, topic) }, [
    ...(caption === undefined ? [] : [xml('title', {}, captionWords(caption, topic))]),
    ...(image === undefined ? [] : [picture(image, topic, 'break')]),
    ...(drawn === undefined ? [] : [xml('p', {}, inline([drawn], topic))]),
    ...(key === undefined ? [] : block(key, topic)),
  ]);
}

/** As one line: "Figure 1. The gap." */
function captionWords(caption: Element, topic: Topic): XmlNode[] {
  return trimmed(
    caption.children.flatMap((part, i) => [
      ...(i === 0 ? [] : [' ']),
      ...trimmed(inline([part], topic, plainOnly)),
    ]),
  );
}

function textIn(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  return node.type === 'element' ? node.children.map(textIn).join('') : '';
}

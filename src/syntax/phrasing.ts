import type { PhrasingContent, Text } from 'mdast';
import { tellBrokenDirectives } from './broken-directive.ts';
import { tellMissingColons } from './missing-colon.ts';
import type { Action } from './model.ts';
import { tellRawHtml } from './raw-html.ts';
import { type Reading, spanOf } from './reading.ts';
import { readTextDirective } from './text-directive.ts';

/**
 * Where a stretch of text stands: in prose, whose actions count and are gathered; or in words that
 * only name something, where no action can be, with what to call them.
 */
export type Setting = { readonly actions: Action[] } | { readonly names: string };

/** Text with its directives read, its links and pictures listed, its references resolved and without HTML. */
export function readPhrasing(
  reading: Reading,
  nodes: readonly PhrasingContent[],
  setting: Setting,
): PhrasingContent[] {
  const read: PhrasingContent[] = [];
  for (const node of nodes) {
    for (const one of readNode(reading, node, setting)) add(read, one);
  }
  return read;
}

function readNode(
  reading: Reading,
  node: PhrasingContent,
  setting: Setting,
): readonly PhrasingContent[] {
  switch (node.type) {
    case 'text':
      tellBrokenDirectives(reading, node);
      tellMissingColons(reading, node);
      return [node];
    case 'html':
      tellRawHtml(reading, node);
      return [];
    case 'textDirective':
      return readTextDirective(reading, node, setting);
    case 'link':
      list(reading, node, node.url, undefined);
      break;
    case 'image':
      list(reading, node, node.url, node.alt ?? undefined);
      return [node];
    case 'linkReference':
    case 'imageReference':
      return resolve(reading, node, setting);
    case 'emphasis':
    case 'strong':
    case 'delete':
      break;
    default:
      return [node];
  }
  node.children = readPhrasing(reading, node.children, setting);
  return [node];
}

type Reference = Extract<PhrasingContent, { type: 'linkReference' | 'imageReference' }>;

/** The parser makes references only of names that are defined. */
function resolve(reading: Reading, node: Reference, setting: Setting): readonly PhrasingContent[] {
  const definition = reading.definition(node.identifier);
  const { position } = node;
  if (definition === undefined) return node.type === 'linkReference' ? node.children : [];
  const { url, title } = definition;
  return node.type === 'linkReference'
    ? readNode(reading, { type: 'link', url, title, children: node.children, position }, setting)
    : readNode(reading, { type: 'image', url, title, alt: node.alt, position }, setting);
}

function list(reading: Reading, node: PhrasingContent, url: string, alt: string | undefined): void {
  reading.links.push({ url, place: reading.placeOf(node), isImage: node.type === 'image', alt });
}

/** Puts a node at the end; text that goes on where text ended becomes one with it. */
function add(nodes: PhrasingContent[], node: PhrasingContent): void {
  const last = nodes.at(-1);
  if (node.type !== 'text' || last?.type !== 'text' || !isNext(last, node)) nodes.push(node);
  else nodes[nodes.length - 1] = joined(last, node);
}

function isNext(a: Text, b: Text): boolean {
  return spanOf(a).end === spanOf(b).start;
}

function joined(a: Text, b: Text): Text {
  const position = a.position && b.position && { start: a.position.start, end: b.position.end };
  return { type: 'text', value: a.value + b.value, position };
}

/** An element with its attributes in the order in which they are written; undefined ones are left out. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: readonly XmlNode[];
}

export type XmlNode = XmlElement | string;

/** An element of XML. */
export function xml(
  name: string,
  attributes: XmlElement['attributes'] = {},
  children: readonly XmlNode[] = [],
): XmlElement {
  return { name, attributes, children };
}

/**
 * A document of XML 1.0 in UTF-8. Elements that `isSpaced` may have white space between the elements in them:
 * each of those goes on a line of its own. Characters that XML does not have become U+FFFD.
 */
export function xmlDocument(
  root: XmlElement,
  { doctype, isSpaced }: { doctype?: string; isSpaced: (name: string) => boolean },
): string {
  const head = ['<?xml version="1.0" encoding="UTF-8"?>', ...(doctype ? [doctype] : [])];
  return `${[...head, element(root, '', isSpaced)].join('\n')}\n`;
}

function element(
  { name, attributes, children }: XmlElement,
  indent: string,
  isSpaced: (name: string) => boolean,
): string {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${inAttribute(value)}"`],
  );
  const start = `<${name}${written.join('')}`;
  if (children.length === 0) return `${start}/>`;
  const elements = children.filter((child) => typeof child !== 'string');
  if (elements.length === children.length && isSpaced(name)) {
    const inner = `${indent}  `;
    const lines = elements.map((child) => `${inner}${element(child, inner, isSpaced)}`);
    return `${start}>\n${lines.join('\n')}\n${indent}</${name}>`;
  }
  const content = children.map((child) =>
    typeof child === 'string' ? inText(child) : element(child, indent, () => false),
  );
  return `${start}>${content.join('')}</${name}>`;
}

const inText = (text: string): string =>
  allowed(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('\r', '&#13;');

const inAttribute = (text: string): string =>
  inText(text).replaceAll('"', '&quot;').replaceAll('\n', '&#10;').replaceAll('\t', '&#9;');

/** The characters of XML 1.0 (fifth edition, 2.2 Char). */
const allowed = (text: string): string =>
  text
    .toWellFormed()
    .replace(/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, '\ufffd');

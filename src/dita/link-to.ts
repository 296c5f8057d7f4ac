import { type PageLink, type XmlNode, xml } from '../render/index.ts';
import { targetOf } from './address.ts';
import type { Topic } from './topic.ts';

/** A link of the published manual as one of the export; its words alone where it leads to no part of that. */
export function linkTo({ href, text }: PageLink, topic: Topic): XmlNode {
  const target = targetOf(href, topic);
  return target === undefined ? text : xml('xref', { ...target }, [text]);
}

/** Several, with commas between them. */
export function linksTo(links: readonly PageLink[], topic: Topic): XmlNode[] {
  return links.flatMap((link, i) => [...(i === 0 ? [] : [', ']), linkTo(link, topic)]);
}

import { type XmlElement, xml } from '../render/index.ts';

/** A fact of a map or a topic for which DITA has no element of its own; none where there is nothing to say. */
export function otherMeta(name: string, content: string | undefined): XmlElement[] {
  return content === undefined ? [] : [xml('othermeta', { name, content })];
}

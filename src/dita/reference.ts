import { type XmlElement, xml } from '../render/index.ts';

/** A reference topic. */
export function reference(
  id: string,
  title: string,
  body: readonly XmlElement[],
  language: string,
): XmlElement {
  return xml('reference', { id, 'xml:lang': language }, [
    xml('title', {}, [title]),
    xml('refbody', {}, body),
  ]);
}

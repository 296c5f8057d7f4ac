import { type Book, type XmlElement, xml } from '../render/index.ts';
import { otherMeta } from './other-meta.ts';

/** The map of the whole manual: safety first, the tasks under their systems, then charts and machines. */
export function map(book: Book, { hasSafety }: { readonly hasSafety: boolean }): XmlElement {
  const topic = (href: string, type: 'task' | 'reference'): XmlElement =>
    xml('topicref', { href, type });
  const head = (title: string, children: readonly XmlElement[]): XmlElement[] =>
    children.length === 0
      ? []
      : [xml('topichead', {}, [xml('topicmeta', {}, [xml('navtitle', {}, [title])]), ...children])];
  const charts = [
    ...(book.torques.length > 0 ? [topic('torque-chart.dita', 'reference')] : []),
    ...(book.fluids.length > 0 ? [topic('fluids.dita', 'reference')] : []),
    ...book.machines.map(({ id }) => topic(`machines/${id}.dita`, 'reference')),
  ];
  const meta = [
    ...(book.publisher === undefined ? [] : [xml('publisher', {}, [book.publisher])]),
    ...otherMeta('edition', book.edition),
    ...otherMeta('issued', book.issued),
    ...otherMeta('address', book.address),
    ...(book.draft ? otherMeta('status', 'draft') : []),
  ];
  return xml('map', { 'xml:lang': book.language }, [
    xml('title', {}, [book.draft ? `DRAFT, not for work: ${book.title}` : book.title]),
    ...(meta.length === 0 ? [] : [xml('topicmeta', {}, meta)]),
    ...(hasSafety ? [topic('safety.dita', 'reference')] : []),
    ...book.systems.flatMap(({ name, sheets }) =>
      head(
        name,
        sheets.map((id) => topic(`procedures/${id}.dita`, 'task')),
      ),
    ),
    ...head('Charts and machines', charts),
  ]);
}

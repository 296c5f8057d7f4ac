import type { Element } from 'hast';
import { type XmlElement, type XmlNode, xml } from '../render/index.ts';
import { inline } from './inline.ts';
import type { Topic } from './topic.ts';

export interface Row {
  readonly id?: string;
  readonly product?: string | undefined;
  readonly cells: readonly (readonly XmlNode[])[];
}

/** A table in the exchange model of OASIS, as DITA has it. Without rows there is none. */
export function table(head: readonly Row[], rows: readonly Row[]): XmlElement[] {
  const cols = Math.max(0, ...[...head, ...rows].map(({ cells }) => cells.length));
  const [body, top] = rows.length === 0 ? [head, []] : [rows, head];
  if (cols === 0 || body.length === 0) return [];
  const columns = Array.from({ length: cols }, (_, i) => xml('colspec', { colname: `c${i + 1}` }));
  return [
    xml('table', {}, [
      xml('tgroup', { cols: String(cols) }, [
        ...columns,
        ...(top.length === 0 ? [] : [xml('thead', {}, top.map(row))]),
        xml('tbody', {}, body.map(row)),
      ]),
    ]),
  ];
}

function row({ id, product, cells }: Row): XmlElement {
  return xml(
    'row',
    { id, product },
    cells.map((cell) => xml('entry', {}, cell)),
  );
}

/** A table of a sheet. */
export function tableFrom(node: Element, topic: Topic): XmlElement[] {
  const rowsIn = (part: 'thead' | 'tbody'): Row[] =>
    elementsIn(node, part)
      .flatMap((group) => elementsIn(group, 'tr'))
      .map((line) => ({
        cells: line.children.flatMap((cell) =>
          cell.type === 'element' ? [inline(cell.children, topic)] : [],
        ),
      }));
  return table(rowsIn('thead'), rowsIn('tbody'));
}

const elementsIn = (node: Element, name: string): Element[] =>
  node.children.flatMap((child) =>
    child.type === 'element' && child.tagName === name ? [child] : [],
  );

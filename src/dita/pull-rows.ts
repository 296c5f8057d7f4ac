import type { PullRow, StateLine, XmlElement, XmlNode } from '../render/index.ts';
import { xml } from '../render/index.ts';
import { linkTo } from './link-to.ts';
import { productOf } from './product.ts';
import type { Topic } from './topic.ts';

/** What is fetched before the work, under a heading; nothing where there is none. */
export function pullRows(heading: string, rows: readonly PullRow[], topic: Topic): XmlElement[] {
  const items = rows.map(({ item, count, isMost, detail, containers, when, condition }) => {
    const counted = count === undefined ? '' : `${isMost ? 'up to ' : ''}${count} × `;
    const told = [detail, containers, when && `only ${when}`].filter(Boolean);
    const inner = [counted, linkTo(item, topic), told.length === 0 ? '' : `, ${told.join(', ')}`];
    return xml('li', { product: productOf(condition, topic) }, inner);
  });
  return headed(heading, items);
}

/** States at the start or the end of the work. */
export function stateRows(
  heading: string,
  lines: readonly StateLine[],
  topic: Topic,
): XmlElement[] {
  const items = lines.map(({ item, state, condition }) =>
    xml('li', { product: productOf(condition, topic) }, [linkTo(item, topic), `: ${state}`]),
  );
  return headed(heading, items);
}

/** A list under its heading; nothing where it is empty. */
export function headed(heading: string, items: readonly XmlElement[]): XmlElement[] {
  if (items.length === 0) return [];
  const words: XmlNode[] = [xml('b', {}, [heading])];
  return [xml('p', { outputclass: 'heading' }, words), xml('ul', {}, items)];
}

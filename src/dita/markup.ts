import type { Element, ElementContent } from 'hast';
import { readMachineCondition } from '../applicability/index.ts';
import { jsonIn } from '../source/index.ts';
import { productOf } from './product.ts';
import type { Topic } from './topic.ts';

/** An attribute of a sheet's element as text; empty where it has none. */
export function textAttribute({ properties }: Element, name: string): string {
  const value = properties[name];
  return typeof value === 'string' ? value : '';
}

export function idOf(node: Element): string | undefined {
  return textAttribute(node, 'id') || undefined;
}

/** The classes of a sheet's element: they say what it is, and the export keeps them. */
export function classOf({ properties: { className } }: Element): string | undefined {
  const classes = Array.isArray(className) ? className.join(' ') : className;
  return typeof classes === 'string' && classes !== '' ? classes : undefined;
}

/** For which machines an element of a sheet is there. */
export function productAt(node: Element, topic: Topic): string | undefined {
  return productOf(readMachineCondition(jsonIn(textAttribute(node, 'dataWhen'))), topic);
}

/** The first element below some nodes that has one of these names. */
export function firstOf(
  nodes: readonly ElementContent[],
  names: readonly string[],
): Element | undefined {
  for (const node of nodes) {
    if (node.type !== 'element') continue;
    if (names.includes(node.tagName)) return node;
    const inner = firstOf(node.children, names);
    if (inner !== undefined) return inner;
  }
  return undefined;
}

import type { Nodes, Root } from 'mdast';
import type { Locator } from '../source/index.ts';
import type { SyntaxFact } from './facts.ts';
import { spanOf } from './reading.ts';

/** Emphasis in emphasis nests too; what reads the tree after this goes down by calling itself. */
const deepest = 400;

/** The first node of a tree that lies deeper than can be read. */
export function tooDeepTree(locator: Locator, root: Root): SyntaxFact | undefined {
  const open: { node: Nodes; depth: number }[] = [{ node: root, depth: 0 }];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { node, depth } = next;
    if (depth > deepest) {
      const { start, end } = spanOf(node);
      return { kind: 'too-deep', place: locator.place(start, end), depth };
    }
    if (!('children' in node)) continue;
    for (const child of node.children) open.push({ node: child, depth: depth + 1 });
  }
  return undefined;
}

import type { Nodes, Root } from 'mdast';
import type { Locator } from '../source/index.ts';
import type { SyntaxFact } from './facts.ts';
import { spanOf } from './reading.ts';

/** Emphasis in emphasis nests too; what reads the tree after this goes down by calling itself. */
const deepest = 400;

/** Work that is repeated is gone through twice, and so twice as often for each round within a round. */
const mostRounds = 5;

/** The first node of a tree that lies deeper than can be read. */
export function tooDeepTree(locator: Locator, root: Root): SyntaxFact | undefined {
  const open: { node: Nodes; depth: number; rounds: number }[] = [
    { node: root, depth: 0, rounds: 0 },
  ];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { node, depth } = next;
    const rounds = next.rounds + Number(isRepeat(node));
    if (depth > deepest || rounds > mostRounds) {
      const { start, end } = spanOf(node);
      const found = rounds > mostRounds ? rounds : depth;
      return { kind: 'too-deep', place: locator.place(start, end), depth: found };
    }
    if (!('children' in node)) continue;
    for (const child of node.children) open.push({ node: child, depth: depth + 1, rounds });
  }
  return undefined;
}

const isRepeat = (node: Nodes): boolean =>
  node.type === 'containerDirective' && node.name === 'repeat';

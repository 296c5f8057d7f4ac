import type { RootContent } from 'mdast';
import type { ContainerDirective } from 'mdast-util-directive';
import type { Around } from './around.ts';
import { readBlockDirective } from './block-directive.ts';
import { readBranch } from './branch.ts';
import { tellUnclosed } from './closing.ts';
import { knownDirective } from './forms.ts';
import type { BlockDirective } from './label.ts';
import { formOf, insteadOfDirective, tellMisplaced, tellUnknown } from './misplaced.ts';
import type { Block } from './model.ts';
import { readProse } from './prose.ts';
import type { Reading } from './reading.ts';
import { readSteps } from './steps.ts';

/** Flow content as the blocks of the language. */
export function readBlocks(
  reading: Reading,
  nodes: readonly RootContent[],
  around: Around,
): Block[] {
  const blocks: Block[] = [];
  for (let i = 0; i < nodes.length; i++) {
    const node = nodes[i];
    if (node === undefined) continue;
    if (isOne('either', node)) {
      const ways = followingWays(nodes, i + 1);
      i += ways.length;
      blocks.push(readBranch(reading, [node, ...ways], around));
    } else if (node.type === 'containerDirective' || node.type === 'leafDirective') {
      for (const block of readDirective(reading, node, around)) blocks.push(block);
    } else if (node.type === 'list' && node.ordered) {
      blocks.push(readSteps(reading, node, around));
    } else {
      const prose = readProse(reading, node);
      if (prose !== undefined) blocks.push(prose);
    }
  }
  return blocks;
}

function readDirective(reading: Reading, node: BlockDirective, around: Around): readonly Block[] {
  const known = knownDirective(node.name);
  if (known?.block !== undefined && known.forms.includes(formOf(node))) {
    tellUnclosed(reading, node, around);
    return readBlockDirective(reading, node, known.block, around);
  }
  if (known === undefined) {
    tellUnknown(reading, node);
    tellUnclosed(reading, node, around);
  } else tellMisplaced(reading, node);
  return known?.block === undefined
    ? readBlocks(reading, insteadOfDirective(node), around)
    : readBlockDirective(reading, node, known.block, around);
}

type Named<N extends string> = ContainerDirective & { name: N };

function isOne<N extends string>(name: N, node: RootContent | undefined): node is Named<N> {
  return node?.type === 'containerDirective' && node.name === name;
}

/** The `:::or` blocks that follow directly. */
function followingWays(nodes: readonly RootContent[], from: number): ContainerDirective[] {
  const ways: ContainerDirective[] = [];
  for (let node = nodes[from]; isOne('or', node); node = nodes[from + ways.length]) ways.push(node);
  return ways;
}

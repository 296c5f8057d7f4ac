import type { Action, Block, Procedure, Step } from '../syntax/index.ts';

/** The blocks directly inside a block; those of steps and ways too. */
export function blocksIn(block: Block): readonly Block[] {
  switch (block.type) {
    case 'steps':
      return block.steps.flatMap((step) => step.blocks);
    case 'branch':
      return block.ways.flatMap((way) => way.blocks);
    case 'prose':
    case 'perform':
      return [];
    default:
      return block.blocks;
  }
}

/** Every block of a procedure, outer before inner, in order of reading. */
export const allBlocks = (procedure: Procedure): readonly Block[] => partsOf(procedure).blocks;

export const allSteps = (procedure: Procedure): readonly Step[] => partsOf(procedure).steps;

export const allActions = (procedure: Procedure): readonly Action[] => partsOf(procedure).actions;

/** Every block below some blocks, themselves included. */
export function within(blocks: readonly Block[]): readonly Block[] {
  const found: Block[] = [];
  gather(blocks, found);
  return found;
}

/** The actions of blocks in order of reading, those that torque blocks stand for included. */
export const actionsIn = (blocks: readonly Block[]): readonly Action[] =>
  within(blocks).flatMap(actionsOf);

/** All that a procedure has of a kind; every rule asks for it, so it is gathered once. */
interface Parts {
  readonly blocks: readonly Block[];
  readonly steps: readonly Step[];
  readonly actions: readonly Action[];
}

const gathered = new WeakMap<Procedure, Parts>();

function partsOf(procedure: Procedure): Parts {
  const known = gathered.get(procedure);
  if (known !== undefined) return known;
  const blocks = within(procedure.sections.flatMap((section) => section.blocks));
  const parts: Parts = {
    blocks,
    steps: blocks.flatMap((block) => (block.type === 'steps' ? block.steps : [])),
    actions: blocks.flatMap(actionsOf),
  };
  gathered.set(procedure, parts);
  return parts;
}

function actionsOf(block: Block): readonly Action[] {
  if (block.type === 'prose') return block.actions;
  return block.type === 'torque' && block.action !== undefined ? [block.action] : [];
}

function gather(blocks: readonly Block[], found: Block[]): void {
  for (const block of blocks) {
    found.push(block);
    if (block.type === 'steps') for (const step of block.steps) gather(step.blocks, found);
    else if (block.type === 'branch') for (const way of block.ways) gather(way.blocks, found);
    else if (block.type !== 'prose' && block.type !== 'perform') gather(block.blocks, found);
  }
}

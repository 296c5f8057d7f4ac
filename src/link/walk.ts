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
export function* allBlocks(procedure: Procedure): Generator<Block> {
  for (const section of procedure.sections) yield* within(section.blocks);
}

/** Every block below some blocks, themselves included. */
export function* within(blocks: readonly Block[]): Generator<Block> {
  for (const block of blocks) {
    yield block;
    yield* within(blocksIn(block));
  }
}

export function* allSteps(procedure: Procedure): Generator<Step> {
  for (const block of allBlocks(procedure)) if (block.type === 'steps') yield* block.steps;
}

/** The actions of blocks in order of reading, those that torque blocks stand for included. */
export function* actionsIn(blocks: readonly Block[]): Generator<Action> {
  for (const block of within(blocks)) {
    if (block.type === 'prose') yield* block.actions;
    if (block.type === 'torque' && block.action !== undefined) yield block.action;
  }
}

export function* allActions(procedure: Procedure): Generator<Action> {
  for (const section of procedure.sections) yield* actionsIn(section.blocks);
}

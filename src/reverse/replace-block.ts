import type { Block, Section } from '../syntax/index.ts';

/** The sections with one block, wherever it stands, replaced by others. */
export function replaceBlock(
  sections: readonly Section[],
  target: Block,
  others: readonly Block[],
): readonly Section[] {
  return sections.map((section) => ({
    ...section,
    blocks: inBlocks(section.blocks, target, others),
  }));
}

function inBlocks(
  blocks: readonly Block[],
  target: Block,
  others: readonly Block[],
): readonly Block[] {
  return blocks.flatMap((block) => (block === target ? others : [inBlock(block, target, others)]));
}

function inBlock(block: Block, target: Block, others: readonly Block[]): Block {
  const inside = (blocks: readonly Block[]) => inBlocks(blocks, target, others);
  switch (block.type) {
    case 'prose':
    case 'perform':
      return block;
    case 'steps':
      return {
        ...block,
        steps: block.steps.map((step) => ({ ...step, blocks: inside(step.blocks) })),
      };
    case 'branch':
      return { ...block, ways: block.ways.map((way) => ({ ...way, blocks: inside(way.blocks) })) };
    default:
      return { ...block, blocks: inside(block.blocks) };
  }
}

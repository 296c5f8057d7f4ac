import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { isTorqued, shownFluid, shownTorque } from '../derive/index.ts';
import type {
  Block,
  Branch,
  FluidBlock,
  HazardPanel,
  Repeat,
  TorqueBlock,
} from '../syntax/index.ts';
import { figureMarkup } from './figure.ts';
import { fluidBox } from './fluid-box.ts';
import { hazardPanel } from './hazard-panel.ts';
import { jobInPlace } from './job-in-place.ts';
import { wayBoxes } from './margin.ts';
import { neededSteps } from './needed-steps.ts';
import { onlyFor } from './only-for.ts';
import { wideOrders } from './order-in-box.ts';
import { prose } from './prose.ts';
import { referenceBlock } from './reference-block.ts';
import { reverseBlock } from './reverse-block.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';
import { jobList, stepList } from './step-list.ts';
import { torqueBox } from './torque-box.ts';

/** Blocks of the language in order of reading. Hazards right before steps move into the first step's row. */
export function blocksMarkup(blocks: readonly Block[], context: SheetContext): ElementContent[] {
  const content: ElementContent[] = [];
  let hazards: HazardPanel[] = [];
  const panels = (): Element[] => hazards.map((panel) => hazardPanel(panel, context));
  for (const block of blocks) {
    if (block.type === 'hazard') {
      hazards.push(block);
      continue;
    }
    const isJob = block.type === 'perform' || block.type === 'reverse';
    if (block.type === 'steps') content.push(stepList(block, hazards, context));
    else if (isJob && context.numbers.of(block) !== undefined) {
      content.push(jobList(block, hazards, context));
    } else content.push(...panels(), ...blockMarkup(block, context));
    hazards = [];
  }
  return [...content, ...panels()];
}

function blockMarkup(
  block: Exclude<Block, { type: 'steps' | 'hazard' }>,
  context: SheetContext,
): ElementContent[] {
  switch (block.type) {
    case 'prose':
      return prose([block.node], context);
    case 'perform': {
      const job = jobInPlace(block, context);
      return job === undefined ? [referenceBlock(block, context)] : [job.head, job.work];
    }
    case 'reverse':
      return [reverseBlock(block, context)];
    case 'torque':
    case 'fluid':
      return [...boxInPlace(block, context), ...context.blocks(block.blocks)];
    case 'needs':
      return [
        h('div.needed', [...neededSteps(block.steps, context), ...context.blocks(block.blocks)]),
      ];
    case 'figure':
      return [figureMarkup(block, context)];
    case 'guarded':
      return [
        h('div.guarded', shownWhen(context.presence.when(block.when)), [
          ...onlyFor(block.when, context),
          ...context.blocks(block.blocks),
          ...(context.inSteps.has(block) ? wayBoxes(block.blocks, context) : []),
        ]),
      ];
    case 'repeat':
      return [repeat(block, context)];
    case 'branch':
      return [branch(block, context)];
  }
}

/** The box of a block that stands in no step, and so in no step's margin. */
function boxInPlace(block: TorqueBlock | FluidBlock, context: SheetContext): Element[] {
  if (context.inSteps.has(block)) return [];
  const item = context.one.item(block.item);
  if (block.type === 'torque') {
    if (!isTorqued(item)) return [];
    const fact = shownTorque(item, block);
    return [torqueBox(fact, context), ...wideOrders({ torques: [fact] }, context)];
  }
  return item?.kind === 'circuit' ? [fluidBox(shownFluid(item, block), context)] : [];
}

function repeat(block: Repeat, context: SheetContext): Element {
  const id = context.freshId('repeat');
  const words = block.phrasing.length > 0 ? prose(block.phrasing, context) : [block.until.text];
  return h('div.branch', [
    h('div.way', { role: 'group', ariaLabelledBy: [id] }, [
      h('p.condition', { id }, ['Repeat ', ...words, ':']),
      ...context.blocks(block.blocks),
    ]),
  ]);
}

function branch(block: Branch, context: SheetContext): Element {
  const ways = block.ways.map((way, i) => {
    const id = context.freshId('way');
    const words = way.phrasing.length > 0 ? prose(way.phrasing, context) : [way.label];
    const lead = block.optional ? 'If ' : i === 0 ? 'Either, if ' : 'Or, if ';
    return h('div.way', { role: 'group', ariaLabelledBy: [id] }, [
      h('p.condition', { id }, [lead, ...words, ':']),
      ...context.blocks(way.blocks),
      ...(context.inSteps.has(block) ? wayBoxes(way.blocks, context) : []),
    ]);
  });
  return h('div.branch', ways);
}

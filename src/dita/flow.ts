import {
  figureMarkup,
  margin,
  neededSteps,
  onlyFor,
  prose,
  referenceBlock,
  reverseBlock,
  stepAnchor,
  wayBoxes,
  type XmlNode,
  xml,
} from '../render/index.ts';
import type { Block, Branch, HazardPanel, Step } from '../syntax/index.ts';
import { blocks } from './blocks.ts';
import { hazardStatement } from './hazard.ts';
import { productOf } from './product.ts';
import type { TaskTopic } from './topic.ts';

/** Blocks of the language where a topic may have any block: in a choice, an entry of a list, below a command. */
export function flow(content: readonly Block[], topic: TaskTopic): XmlNode[] {
  const out: XmlNode[] = [];
  let hazards: HazardPanel[] = [];
  const statements = (): XmlNode[] => hazards.map((panel) => hazardStatement(panel, topic));
  for (const block of content) {
    if (block.type === 'hazard') {
      hazards.push(block);
      continue;
    }
    if (block.type === 'steps') {
      const guards = hazards;
      const items = block.steps.map((step, i) => stepItem(step, i === 0 ? guards : [], topic));
      out.push(xml('ol', {}, items));
    } else out.push(...statements(), ...blockFlow(block, topic));
    hazards = [];
  }
  return [...out, ...statements()];
}

function blockFlow(
  block: Exclude<Block, { type: 'steps' | 'hazard' }>,
  topic: TaskTopic,
): XmlNode[] {
  const { context } = topic;
  switch (block.type) {
    case 'prose':
      return blocks(prose([block.node], context), topic);
    case 'perform':
      return blocks([referenceBlock(block, context)], topic);
    case 'reverse':
      return blocks([reverseBlock(block, context)], topic);
    case 'figure':
      return blocks([figureMarkup(block, context)], topic);
    case 'torque':
    case 'fluid':
      // Its box stands with those of the step, or in its place outside the steps.
      return context.inSteps.has(block)
        ? flow(block.blocks, topic)
        : blocks(context.blocks([block]), topic);
    case 'needs':
      return [...blocks(neededSteps(block.steps, context), topic), ...flow(block.blocks, topic)];
    case 'guarded': {
      const product = productOf(context.presence.when(block.when), topic);
      const inner = [
        ...blocks(onlyFor(block.when, context), topic),
        ...flow(block.blocks, topic),
        ...boxesOf(block, block.blocks, topic),
      ];
      return [xml('div', { product }, inner)];
    }
    case 'repeat': {
      const words = block.phrasing.length > 0 ? prose(block.phrasing, context) : [];
      const said = words.length > 0 ? words : [{ type: 'text', value: block.until.text } as const];
      const lead = blocks([{ type: 'text', value: 'Repeat ' }, ...said, colon], topic);
      return [xml('div', {}, [...lead, ...flow(block.blocks, topic)])];
    }
    case 'branch':
      return [
        xml(
          'ul',
          {},
          waysOf(block, topic).map((way) => xml('li', {}, way)),
        ),
      ];
  }
}

/** Each way through a branch: the words of its condition, then what is in it. */
export function waysOf(branch: Branch, topic: TaskTopic): readonly (readonly XmlNode[])[] {
  return branch.ways.map((way, i) => [
    ...wayLead(branch, i, topic),
    ...flow(way.blocks, topic),
    ...boxesOf(branch, way.blocks, topic),
  ]);
}

/** "If the belt is cracked:" */
export function wayLead(branch: Branch, index: number, topic: TaskTopic): XmlNode[] {
  const way = branch.ways[index];
  if (way === undefined) return [];
  const lead = branch.optional ? 'If ' : index === 0 ? 'Either, if ' : 'Or, if ';
  const words =
    way.phrasing.length > 0
      ? prose(way.phrasing, topic.context)
      : [{ type: 'text', value: way.label } as const];
  return blocks([{ type: 'text', value: lead }, ...words, colon], topic);
}

/** Figures of a part of a step. Outside the steps each step in it has its own. */
function boxesOf(block: Block, inside: readonly Block[], topic: TaskTopic): XmlNode[] {
  return topic.context.inSteps.has(block) ? blocks(wayBoxes(inside, topic.context), topic) : [];
}

/** A step as an entry of a list, with the number of the sheet as its id. */
function stepItem(step: Step, guards: readonly HazardPanel[], topic: TaskTopic): XmlNode {
  const { context } = topic;
  const product = productOf(context.presence.step(step), topic);
  const own = step.blocks.filter((block) => block.type === 'hazard');
  const others = step.blocks.filter((block) => block.type !== 'hazard');
  return xml('li', { id: stepAnchor(context.numbers.of(step) ?? ''), product }, [
    ...[...guards, ...own].map((panel) => hazardStatement(panel, topic)),
    ...blocks(onlyFor(step.when, context), topic),
    ...blocks(neededSteps(step.needs, context), topic),
    ...flow(others, topic),
    ...blocks(margin(step, context), topic),
  ]);
}

const colon = { type: 'text', value: ':' } as const;

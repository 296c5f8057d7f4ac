import { allOf, type MachineCondition } from '../applicability/index.ts';
import {
  margin,
  neededSteps,
  onlyFor,
  prose,
  referenceBlock,
  reverseBlock,
  stepAnchor,
  type XmlElement,
  type XmlNode,
  xml,
} from '../render/index.ts';
import type { Block, HazardPanel, Perform, Reverse, Step } from '../syntax/index.ts';
import { blocks } from './blocks.ts';
import { flow, waysOf } from './flow.ts';
import { hazardStatement } from './hazard.ts';
import { inline } from './inline.ts';
import { productOf } from './product.ts';
import type { TaskTopic } from './topic.ts';

/**
 * A step of a task: its hazards, one command, then all that belongs to it. `around` are the machines that the
 * text is for where the step stands.
 */
export function taskStep(
  step: Step,
  guards: readonly HazardPanel[],
  around: MachineCondition | undefined,
  topic: TaskTopic,
): XmlElement {
  return stepElement('step', step, guards, around, topic);
}

/** A job of another sheet, or a section to be undone, that stands outside the lists. */
export function taskJob(
  job: Perform | Reverse,
  guards: readonly HazardPanel[],
  around: MachineCondition | undefined,
  topic: TaskTopic,
): XmlElement {
  const { context } = topic;
  const id = stepAnchor(context.numbers.of(job) ?? '');
  const product = productOf(allOf([around, context.presence.numbered(job)]), topic);
  return xml('step', { id, product }, [
    ...guards.map((panel) => hazardStatement(panel, topic)),
    xml('cmd', {}, jobWords(job, topic)),
  ]);
}

function stepElement(
  name: 'step' | 'substep',
  step: Step,
  guards: readonly HazardPanel[],
  around: MachineCondition | undefined,
  topic: TaskTopic,
): XmlElement {
  const { context } = topic;
  const own = step.blocks.filter((block) => block.type === 'hazard');
  const { words, rest } = command(step.blocks, topic);
  const id = stepAnchor(context.numbers.of(step) ?? '');
  const product = productOf(allOf([around, context.presence.step(step)]), topic);
  const only = onlyFor(step.when, context).flatMap((part) => [
    ...inline(part.children, topic),
    ' ',
  ]);
  const needed = neededSteps(step.needs, context).flatMap((part) => [
    ...inline(part.children, topic),
    ': ',
  ]);
  return xml(name, { id, product }, [
    ...[...guards, ...own].map((panel) => hazardStatement(panel, topic)),
    xml('cmd', {}, [...only, ...needed, ...words]),
    ...rest.flatMap((block) => below(name, block, topic)),
    ...info(blocks(margin(step, context), topic)),
  ]);
}

/** The first words of a step are its command; without any, the job that it is. */
function command(
  all: readonly Block[],
  topic: TaskTopic,
): { readonly words: readonly XmlNode[]; readonly rest: readonly Block[] } {
  const content = all.filter((block) => block.type !== 'hazard');
  const [first, ...rest] = content;
  if (first?.type === 'prose' && first.node.type === 'paragraph') {
    const [paragraph] = prose([first.node], topic.context);
    if (paragraph?.type === 'element' && paragraph.tagName === 'p')
      return { words: inline(paragraph.children, topic), rest };
  }
  if (first?.type === 'perform' || first?.type === 'reverse')
    return { words: jobWords(first, topic), rest };
  return { words: ['Do the following:'], rest: content };
}

function jobWords(job: Perform | Reverse, topic: TaskTopic): XmlNode[] {
  const { context } = topic;
  const markup = job.type === 'perform' ? referenceBlock(job, context) : reverseBlock(job, context);
  return markup.children.flatMap((part, i) => {
    const inner = part.type === 'element' ? part.children : [part];
    return [...(i === 0 ? [] : [' ']), ...inline(inner, topic)];
  });
}

/** Steps in a step have an element of their own, and so have its choices; in a substep they are lists. */
function below(name: 'step' | 'substep', block: Block, topic: TaskTopic): XmlNode[] {
  if (name === 'step' && block.type === 'steps') {
    const substeps = block.steps.map((step) => stepElement('substep', step, [], undefined, topic));
    return [xml('substeps', {}, substeps)];
  }
  if (name === 'step' && block.type === 'branch') {
    const choices = waysOf(block, topic).map((way) => xml('choice', {}, way));
    return [xml('choices', {}, choices)];
  }
  return info(flow([block], topic));
}

const info = (content: readonly XmlNode[]): XmlNode[] =>
  content.length === 0 ? [] : [xml('info', {}, content)];

import type { ContentData, StepData } from '../../schemas/procedure-content.ts';
import { actionsOf, idWords, isTorqued, type Pieces, stepFacts } from '../derive/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Block, HazardPanel, Prose, Step } from '../syntax/index.ts';
import { actionData } from './action-data.ts';
import { caseData } from './case-data.ts';
import { figureData } from './figure-data.ts';
import { hazardData } from './hazard-data.ts';
import { fluidData, itemData, torqueData, writtenData } from './item-data.ts';
import { plainText } from './plain-text.ts';
import { prose } from './prose.ts';
import type { SheetContext } from './sheet-context.ts';

/** Blocks for programs, in order of reading. Hazards right before steps go to the first step, as on the sheet. */
export function contentData(blocks: readonly Block[], context: SheetContext): ContentData[] {
  const content: ContentData[] = [];
  let hazards: HazardPanel[] = [];
  const loose = (): ContentData[] =>
    hazards.map((panel) => ({ type: 'hazard', ...hazardData(panel, context) }));
  for (const block of blocks) {
    if (block.type === 'hazard') {
      hazards.push(block);
      continue;
    }
    if (block.type === 'steps') {
      const guards = hazards;
      content.push(...block.steps.map((step, i) => stepData(step, i === 0 ? guards : [], context)));
    } else content.push(...loose(), ...blockData(block, context));
    hazards = [];
  }
  return [...content, ...loose()];
}

function stepData(step: Step, guards: readonly HazardPanel[], context: SheetContext): StepData {
  const { one, manual, policy } = context;
  const facts = stepFacts(step, one);
  const panels = [...guards, ...step.blocks.filter((block) => block.type === 'hazard')];
  const texts = step.blocks.filter((block) => block.type === 'prose');
  const inside = step.blocks.filter(({ type }) => type !== 'hazard' && type !== 'prose');
  const actions = step.blocks.flatMap(actionsOf);
  const when = caseData([step.when], manual);
  return {
    type: 'step',
    number: context.numbers.of(step) ?? '',
    ...(step.id === undefined ? {} : { id: step.id.id }),
    words: wordsOf(texts, context),
    hazards: panels.map((panel) => hazardData(panel, context)),
    actions: actions.map((action) => actionData(action, context)),
    ...(step.people > 1 ? { people: step.people } : {}),
    ...(step.time === undefined ? {} : { time: writtenData(step.time.text, policy) }),
    ...(step.wait === undefined ? {} : { wait: writtenData(step.wait.text, policy) }),
    ...(step.needs.length === 0 ? {} : { needs: step.needs.map(({ id }) => id) }),
    ...(facts.tools.length === 0 ? {} : { tools: pieces(facts.tools, one) }),
    ...(facts.consumables.length === 0 ? {} : { consumables: pieces(facts.consumables, one) }),
    ...(when === undefined ? {} : { when }),
    content: contentData(inside, context),
  };
}

function blockData(
  block: Exclude<Block, { type: 'steps' | 'hazard' }>,
  context: SheetContext,
): ContentData[] {
  const { one, manual, policy } = context;
  switch (block.type) {
    case 'prose': {
      const words = wordsOf([block], context);
      const actions = block.actions.map((action) => actionData(action, context));
      return words === '' && actions.length === 0 ? [] : [{ type: 'text', words, actions }];
    }
    case 'perform': {
      const { procedure, part, each } = block;
      const isInPlace = context.numbers.job(block) !== undefined;
      const title = manual.procedures.get(procedure.id)?.procedure.front.title ?? procedure.id;
      const number = context.numbers.of(block);
      const when = caseData([block.when], manual);
      return [
        {
          type: 'perform',
          ...(number === undefined ? {} : { number }),
          procedure: { id: procedure.id, title },
          ...(part === undefined ? {} : { part: part.id }),
          ...(each === undefined ? {} : { at: idWords(each.id) }),
          ...(isInPlace ? { inPlace: true } : {}),
          ...(when === undefined ? {} : { when }),
        },
      ];
    }
    case 'reverse': {
      const number = context.numbers.of(block);
      const when = caseData([block.when], manual);
      return [
        {
          type: 'undo',
          ...(number === undefined ? {} : { number }),
          section: block.of.id,
          except: block.except.map(({ id }) => id),
          ...(when === undefined ? {} : { when }),
        },
      ];
    }
    case 'figure':
      return [figureData(block, context)];
    case 'torque':
    case 'fluid': {
      const item = one.item(block.item);
      const when = caseData([block.when], manual);
      const words = plainText(context.blocks(block.blocks));
      const rest = {
        item: itemData(block.item, one),
        words,
        ...(when === undefined ? {} : { when }),
      };
      if (block.type === 'torque')
        return isTorqued(item)
          ? [
              {
                type: 'torque',
                torque: torqueData(item.torque.spec, policy, item.torque.threads),
                ...rest,
              },
            ]
          : [];
      return item?.kind === 'circuit'
        ? [{ type: 'fluid', fluid: fluidData(item, policy), ...rest }]
        : [];
    }
    case 'guarded': {
      const when = caseData([block.when], manual);
      const content = contentData(block.blocks, context);
      return when === undefined ? content : [{ type: 'only', when, content }];
    }
    case 'needs': {
      const steps = block.steps.map(({ id }) => id);
      return [{ type: 'needs', steps, content: contentData(block.blocks, context) }];
    }
    case 'repeat': {
      const said = plainText(prose(block.phrasing, context));
      const words = said === '' ? block.until.text : said;
      return [{ type: 'repeat', words, content: contentData(block.blocks, context) }];
    }
    case 'branch': {
      const ways = block.ways.map((way) => ({
        if: plainText(prose(way.phrasing, context)) || way.label,
        content: contentData(way.blocks, context),
      }));
      return [{ type: 'choice', optional: block.optional, ways }];
    }
  }
}

const wordsOf = (texts: readonly Prose[], context: SheetContext): string =>
  plainText(texts.flatMap(({ node }) => prose([node], context)));

const pieces = (all: readonly Pieces[], one: LinkedProcedure) =>
  all.map(({ item, count }) => ({
    ...itemData(item, one),
    count,
  }));

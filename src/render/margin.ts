import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Item } from '../catalogue/index.ts';
import {
  actionWords,
  boundValues,
  countOf,
  idWords,
  instancesMeant,
  itemName,
  type Pieces,
  type Reading,
  type StepFacts,
  stepFacts,
  type WorkFacts,
  workFacts,
  writtenText,
} from '../derive/index.ts';
import { parseQuantity, piecesByPolicy } from '../quantity/index.ts';
import type { Block, Step } from '../syntax/index.ts';
import { itemMarkup } from './action-markup.ts';
import { fluidBox } from './fluid-box.ts';
import type { SheetContext } from './sheet-context.ts';
import { recordBoxes, torqueBox, value } from './torque-box.ts';

/** The boxes level with a step, figures first. */
export function margin(step: Step, context: SheetContext): Element[] {
  const facts = stepFacts(step, context.one);
  return [...workBoxes(facts, context), ...crew(facts, context)];
}

/** The boxes of a way through a step, below its words, so that no one takes them for those of every way. */
export function wayBoxes(blocks: readonly Block[], context: SheetContext): Element[] {
  const boxes = workBoxes(workFacts(blocks, context.one), context);
  return boxes.length === 0 ? [] : [h('div.boxes', boxes)];
}

function workBoxes(facts: WorkFacts, context: SheetContext): Element[] {
  return [
    ...facts.torques.map((fact) => torqueBox(fact, context)),
    ...facts.fluids.map((fact) => fluidBox(fact, context)),
    ...facts.readings.map((reading) => readingBox(reading, context)),
    ...facts.lifted.map((part) => massBox(part, context)),
    ...marks('discard', 'Discard', facts.scrapped, context),
    ...marks('new', 'New', facts.fitted, context),
    ...list('tools', 'Tools', facts.tools, context),
    ...list('consumables', 'Use', facts.consumables, context),
  ];
}

function readingBox({ action, item }: Reading, context: SheetContext): Element {
  const words = action.words.trim();
  const made =
    item === undefined
      ? action.item.id
      : joined(actionWords({ ...action, value: undefined }, item, context.one, context.policy));
  const name = words === '' ? made : words;
  const limit = action.value && parseQuantity(action.value.text).value;
  return h(
    'div.box.reading',
    { role: 'group', ariaLabel: `Reading: ${name}`, dataItem: action.item.id },
    [
      h(
        'p.box-title',
        item === undefined ? idWords(action.item.id) : itemMarkup(item, itemName(item), context),
      ),
      ...(limit === undefined
        ? action.value
          ? [h('p.value', action.value.text)]
          : []
        : [h('p.value', value(piecesByPolicy(limit, context.policy)))]),
      h('div.read', ['Read: ', ...recordBoxes(name, 'value read', marksOf(action, item))]),
    ],
  );
}

/** A mark for each piece that is measured, as long as they are few: 1 and 2, left and right, or left 1 to right 2. */
function marksOf(action: Reading['action'], item: Item | undefined): readonly string[] {
  if (item === undefined) return [];
  const instances = instancesMeant(action, item);
  const count = countOf(action, item);
  const atEach = count / Math.max(1, instances.length);
  const numbers = Array.from({ length: count > 8 ? 1 : atEach }, (_, i) => String(i + 1));
  if (instances.length === 0) return numbers.length === 1 ? [] : numbers;
  if (numbers.length === 1) return instances;
  return instances.flatMap((instance) => numbers.map((number) => `${instance} ${number}`));
}

const joined = ({ before, name, after }: { before: string; name: string; after: string }): string =>
  before + name + after;

function massBox(part: StepFacts['lifted'][number], context: SheetContext): Element {
  const { mass } = part;
  return h('div.box.mass', { dataItem: part.id }, [
    h('p.box-title', itemMarkup(part, itemName(part), context)),
    ...(mass === undefined ? [] : [h('p.value', value(piecesByPolicy(mass, context.policy)))]),
  ]);
}

function marks(
  kind: string,
  word: string,
  pieces: readonly Pieces[],
  context: SheetContext,
): Element[] {
  return pieces.map(({ item, count }) =>
    h('p', { className: ['box', 'mark', kind], dataItem: item.id }, [
      h('strong', word),
      ' ',
      itemMarkup(item, itemName(item, count), context),
      ...times(count),
    ]),
  );
}

function list(
  kind: string,
  title: string,
  pieces: readonly Pieces[],
  context: SheetContext,
): Element[] {
  if (pieces.length === 0) return [];
  const lines = pieces.map(({ item, count }) =>
    h('li', [itemMarkup(item, itemName(item, count), context), ...times(count), ...size(item)]),
  );
  return [h('div', { className: ['box', kind] }, [h('p.box-title', title), h('ul', lines)])];
}

const times = (count: number): string[] => (count > 1 ? [` ×\u00a0${count}`] : []);

function size(item: Item): ElementContent[] {
  const told =
    item.kind === 'tool' ? item.size : item.kind === 'consumable' ? item.specification : undefined;
  return told === undefined ? [] : [{ type: 'text', value: `, ${boundValues(told)}` }];
}

function crew({ people, time }: StepFacts, { policy }: SheetContext): Element[] {
  const told = [
    ...(people > 1 ? [`${people}\u00a0people`] : []),
    ...(time === undefined ? [] : [writtenText(time, policy)]),
  ];
  return told.length === 0 ? [] : [h('p.box.crew', told.join(', '))];
}

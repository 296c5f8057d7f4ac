import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Item } from '../catalogue/index.ts';
import {
  type Asked,
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
import { expectedReading } from '../link/index.ts';
import { piecesByPolicy, printedLimits, type Quantity } from '../quantity/index.ts';
import type { Block, Step } from '../syntax/index.ts';
import { itemMarkup } from './action-markup.ts';
import { fluidBox } from './fluid-box.ts';
import { loosenBox, wideOrders } from './order-in-box.ts';
import { recordBoxes } from './record-boxes.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen, shownWhenAny } from './shown-when.ts';
import { torqueBox } from './torque-box.ts';
import { twoUnits } from './two-units.ts';

/** The boxes level with a step, figures first. */
export function margin(step: Step, context: SheetContext): Element[] {
  const facts = stepFacts(step, context.one);
  return [...workBoxes(facts, context), ...crew(facts, context)];
}

/** The boxes of a way through a step, below its words, so that no one takes them for those of every way. */
export function wayBoxes(blocks: readonly Block[], context: SheetContext): Element[] {
  const facts = workFacts(blocks, context.one);
  const boxes = workBoxes(facts, context);
  return [...wideOrders(facts, context), ...(boxes.length === 0 ? [] : [h('div.boxes', boxes)])];
}

/** What the margin has no room for, below the words of a step. */
export function belowWords(step: Step, context: SheetContext): Element[] {
  return wideOrders(stepFacts(step, context.one), context);
}

function workBoxes(facts: WorkFacts, context: SheetContext): Element[] {
  return [
    ...facts.torques.map((fact) => torqueBox(fact, context)),
    ...facts.loosened.map((fact) => loosenBox(fact, context)),
    ...facts.fluids.map((fact) => fluidBox(fact, context)),
    ...facts.readings.map((reading) => readingBox(reading, context)),
    ...facts.facing.map((asked) => facingBox(asked, context)),
    ...facts.lifted.map((asked) => massBox(asked, context)),
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
  const expected = expectedReading(action, item);
  const limits = expected && printedLimits(expected, context.policy);
  const label = { role: 'group', ariaLabel: `Reading: ${name}`, dataItem: action.item.id };
  return h('div.box.reading', { ...label, ...shownWhen(context.presence.when(action.when)) }, [
    h(
      'p.box-title',
      item === undefined ? idWords(action.item.id) : itemMarkup(item, itemName(item), context),
    ),
    ...expectedText(expected, action, context),
    h('div.read', ['Read: ', ...recordBoxes(name, 'value read', marksOf(action, item), limits)]),
  ]);
}

function expectedText(
  expected: Quantity | undefined,
  { value: said }: Reading['action'],
  { policy }: SheetContext,
): Element[] {
  if (expected !== undefined) return [h('p.value', twoUnits(piecesByPolicy(expected, policy)))];
  return said === undefined ? [] : [h('p.value', said.text)];
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

/** The attribute of a box that stands for some actions. */
const shownFor = ({ whens }: Pick<Asked, 'whens'>, { presence }: SheetContext) =>
  shownWhenAny(whens.map((when) => presence.when(when)));

function facingBox(asked: Asked, context: SheetContext): Element {
  const { item } = asked;
  const facing = 'facing' in item ? (item.facing ?? '') : '';
  return h('div.box.facing', { dataItem: item.id, ...shownFor(asked, context) }, [
    h('p.box-title', ['Facing: ', itemMarkup(item, itemName(item), context)]),
    h('p.detail', boundValues(facing)),
  ]);
}

function massBox(asked: StepFacts['lifted'][number], context: SheetContext): Element {
  const { item: part } = asked;
  const { mass } = part;
  return h('div.box.mass', { dataItem: part.id, ...shownFor(asked, context) }, [
    h('p.box-title', itemMarkup(part, itemName(part), context)),
    ...(mass === undefined ? [] : [h('p.value', twoUnits(piecesByPolicy(mass, context.policy)))]),
  ]);
}

function marks(
  kind: string,
  word: string,
  pieces: readonly Pieces[],
  context: SheetContext,
): Element[] {
  return pieces.map((asked) => {
    const { item, count } = asked;
    const named = { className: ['box', 'mark', kind], dataItem: item.id };
    return h('p', { ...named, ...shownFor(asked, context) }, [
      h('strong', word),
      ' ',
      itemMarkup(item, itemName(item, count), context),
      ...times(count),
    ]);
  });
}

function list(
  kind: string,
  title: string,
  pieces: readonly Pieces[],
  context: SheetContext,
): Element[] {
  if (pieces.length === 0) return [];
  const lines = pieces.map((asked) => {
    const { item, count } = asked;
    const name = itemMarkup(item, itemName(item, count), context);
    return h('li', shownFor(asked, context), [name, ...times(count), ...size(item)]);
  });
  const whens = pieces.flatMap((asked) => asked.whens);
  return [
    h('div', { className: ['box', kind], ...shownFor({ whens }, context) }, [
      h('p.box-title', title),
      h('ul', lines),
    ]),
  ];
}

const times = (count: number): string[] => (count > 1 ? [` ×\u00a0${count}`] : []);

function size(item: Item): ElementContent[] {
  const told =
    item.kind === 'tool' ? item.size : item.kind === 'consumable' ? item.specification : undefined;
  return told === undefined ? [] : [{ type: 'text', value: `, ${boundValues(told)}` }];
}

function crew({ people, time, wait }: StepFacts, { policy }: SheetContext): Element[] {
  const told = [
    ...(people > 1 ? [`${people}\u00a0people`] : []),
    ...(time === undefined ? [] : [writtenText(time, policy)]),
    ...(wait === undefined
      ? []
      : [`${time === undefined ? '' : 'then '}wait ${writtenText(wait, policy)}`]),
  ];
  return told.length === 0 ? [] : [h('p.box.crew', told.join(', '))];
}

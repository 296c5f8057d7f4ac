import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Pattern } from '../../schemas/catalogue.ts';
import { itemName, type LoosenedFact, type TorqueFact, type WorkFacts } from '../derive/index.ts';
import {
  lastRound,
  looseningOrder,
  type TighteningOrder,
  tighteningOrder,
} from '../joint/index.ts';
import { printByPolicy } from '../quantity/index.ts';
import { itemMarkup } from './action-markup.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';
import { pictureFigure, tighteningPicture } from './tightening-picture.ts';
import { countedWords, numbersInOrder } from './tightening-words.ts';

/** Below the words of a step there is more room than in the margin. */
const inText = ['medium', 'wide'] as const;

/** In a torque box: the order of tightening as a picture, and what follows the last stage. */
export function orderInBox(
  { item, pattern, wrench }: TorqueFact,
  context: SheetContext,
): Element[] {
  if (pattern === undefined || item.kind !== 'fastener') return [];
  const { spec } = item.torque;
  const lead = spec.stages.length > 1 ? 'Each stage in this order:' : 'In this order:';
  const picture = tighteningPicture(tighteningOrder(pattern), labelOf(pattern, 'Tightening'), [
    'margin',
  ]);
  const round = lastRound(pattern, spec);
  const at =
    round && (wrench === undefined ? printByPolicy(round, context.policy) : 'the last setting');
  return [
    ...(picture === undefined
      ? [h('p.order', inWords(pattern, spec.stages.length > 1 ? 'Each stage in' : 'In'))]
      : [h('p.order', lead), picture]),
    ...(at === undefined
      ? []
      : [h('p.order', `Then once round, clockwise, at ${at}, until none turns.`)]),
  ];
}

/** The order in which fasteners are loosened: the reverse of that in which they are tightened. */
export function loosenBox({ item, pattern, when }: LoosenedFact, context: SheetContext): Element {
  const name = itemName(item, item.count);
  const order = looseningOrder(pattern);
  const label = { role: 'group', ariaLabel: `Loosen: ${name}`, dataItem: item.id };
  const sizes = ['small', 'margin'] as const;
  const picture = tighteningPicture(order, labelOf(pattern, 'Loosening', order), sizes);
  return h('div.box.loosen', { ...label, ...shownWhen(context.presence.when(when)) }, [
    ...onlyFor(when, context),
    h('p.box-title', itemMarkup(item, name, context)),
    ...(picture === undefined
      ? [h('p.order', 'Loosen in the reverse of the tightening order.')]
      : [h('p.order', 'Loosen in this order:'), picture]),
  ]);
}

/** Pictures with too many bolts for the margin, to stand below the text of a step. */
export function wideOrders(
  { torques }: Pick<WorkFacts, 'torques'>,
  { presence }: SheetContext,
): Element[] {
  return torques.flatMap(({ item, pattern, when }) => {
    if (pattern === undefined) return [];
    const order = tighteningOrder(pattern);
    const label = labelOf(pattern, 'Tightening');
    if (tighteningPicture(order, label, ['margin']) !== undefined) return [];
    const picture = tighteningPicture(order, label, inText);
    const caption = `Tightening order: ${itemName(item, item.count)}`;
    const shown = shownWhen(presence.when(when));
    return picture === undefined ? [] : [pictureFigure(picture, caption, shown)];
  });
}

/** Where the margin has no room for the picture: by the wide one, or in numbers where even that has none. */
function inWords(pattern: Pattern, lead: string): string {
  const order = tighteningOrder(pattern);
  if (tighteningPicture(order, '', inText) !== undefined)
    return `${lead} the order of the picture.`;
  return `${lead} this order, ${countedWords(pattern)}: ${numbersInOrder(order)}.`;
}

/** "Tightening order of 8 bolts, counted clockwise from the top: 1, 5, 3, 7, 2, 6, 4, 8" */
function labelOf(
  pattern: Pattern,
  word: 'Tightening' | 'Loosening',
  order: TighteningOrder = tighteningOrder(pattern),
): string {
  return `${word} order of ${order.order.length}, ${countedWords(pattern)}: ${numbersInOrder(order)}`;
}

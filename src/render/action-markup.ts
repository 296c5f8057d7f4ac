import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Item } from '../catalogue/index.ts';
import {
  actionWords,
  instancesMeant,
  instanceWords,
  itemName,
  onlyWords,
  piecesAtEach,
} from '../derive/index.ts';
import type { Action } from '../syntax/index.ts';
import { itemAddress, type SheetContext } from './sheet-context.ts';
import { calloutMark } from './shown-figures.ts';
import { saidUnless, shownWhen } from './shown-when.ts';

/** The words in which an action is said: the writer's, or where there are none those of the catalogue. */
export function actionMarkup(
  action: Action,
  { label, isFirst }: { label: ElementContent[]; isFirst: boolean },
  context: SheetContext,
): Element {
  const item = context.one.item(action.item);
  const isSentence = isFirst && action.when === undefined;
  const inner =
    label.length > 0
      ? [...linkName(label, item, context), ...places(action, item)]
      : madeWords(action, item, isSentence, context);
  const when = shownWhen(context.presence.when(action.when));
  return h('span.action', { dataVerb: action.verb, dataItem: action.item.id, ...when }, [
    ...only(action, isFirst, context),
    ...inner,
  ]);
}

function only({ when }: Action, isFirst: boolean, context: SheetContext): ElementContent[] {
  if (when === undefined) return [];
  const words = onlyWords(when.condition, context.manual.manual.settings.variants);
  const unless = saidUnless(context.presence.when(when));
  return [h('span.only', unless, `${isFirst ? words : small(words)}: `)];
}

/** The instances of the item, where the writer's words do not name them. */
function places(action: Action, item: Item | undefined): ElementContent[] {
  const instances = item === undefined ? [] : instancesMeant(action, item);
  if (item === undefined || instances.every((instance) => says(action.words, instance))) return [];
  return [h('span.at', ` (${instanceWords(instances, piecesAtEach(item))})`)];
}

const says = (words: string, instance: string): boolean =>
  ` ${words.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, ' ')} `.includes(
    ` ${instance.toLowerCase()} `,
  );

function madeWords(
  action: Action,
  item: Item | undefined,
  isFirst: boolean,
  context: SheetContext,
): ElementContent[] {
  if (item === undefined) return [text(`${action.verb} ${action.item.id}`)];
  const { before, name, after } = actionWords(action, item, context.one, context.policy);
  const lead = isFirst ? before : small(before);
  return [text(lead), ...numbered(item, name, context), text(after)];
}

/** A link to the item's entry where the writer's words name it and hold nothing but text. */
function linkName(
  label: ElementContent[],
  item: Item | undefined,
  context: SheetContext,
): ElementContent[] {
  const [only, ...others] = label;
  const unnamed = [...label, ...mark(item, context)];
  if (item === undefined || only?.type !== 'text' || others.length > 0) return unnamed;
  const found = nameIn(only.value, item);
  if (found === undefined) return unnamed;
  const { value } = only;
  return [
    text(value.slice(0, found.start)),
    ...numbered(item, value.slice(found.start, found.end), context),
    text(value.slice(found.end)),
  ];
}

/** The item's name where it stands as whole words, the plural first. */
function nameIn(words: string, item: Item): { start: number; end: number } | undefined {
  const also = item.kind === 'hazard' ? [] : item['also-called'];
  const lower = words.toLowerCase().replaceAll('\u00a0', ' ');
  for (const name of [itemName(item, 2), itemName(item), ...also]) {
    const start = lower.length === words.length ? lower.indexOf(name.toLowerCase()) : -1;
    const end = start + name.length;
    const isWhole =
      !/[\p{L}\p{N}]$/u.test(words.slice(0, start)) && !/^[\p{L}\p{N}]/u.test(words.slice(end));
    if (start >= 0 && isWhole) return { start, end };
  }
  return undefined;
}

/** The item's name and, where a figure of the sheet shows it, its number there. */
function numbered(item: Item, name: string, context: SheetContext): ElementContent[] {
  return [itemMarkup(item, name, context), ...mark(item, context)];
}

function mark(item: Item | undefined, { figures }: SheetContext): ElementContent[] {
  return calloutMark(item, figures).flatMap((link) => [text('\u00a0'), link]);
}

/** An item's name, as a link where it has an entry on a machine's page. */
export function itemMarkup(item: Item, name: string, context: SheetContext): Element {
  const href = itemAddress(item, context);
  return href === undefined ? h('span.item', name) : h('a.item', { href }, name);
}

const small = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

const text = (value: string): ElementContent => ({ type: 'text', value });

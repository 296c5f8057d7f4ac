import type { Item, ItemKind } from '../catalogue/index.ts';
import {
  allItems,
  boundValues,
  conditionWords,
  itemName,
  type Owned,
  piecesOf,
  strengthOf,
  type Use,
  valuesInText,
} from '../derive/index.ts';
import { printAsWritten, printByPolicy } from '../quantity/index.ts';
import { compareText } from '../source/index.ts';
import type { PageLink, Stock, StockRow } from './book.ts';
import type { ManualContext } from './sheet-context.ts';
import { itemLink, procedureLink, rowAnchor } from './site-links.ts';

type StockItem = Exclude<Item, { kind: 'hazard' }>;

/** The tools, aids, parts and consumables of all machines, by name, with where each is used. */
export function stockOf(usesOf: (item: Item) => readonly Use[], context: ManualContext): Stock {
  const items = [...allItems(context.manual)]
    .sort(byName)
    .flatMap(({ item, owner }) => (item.kind === 'hazard' ? [] : [{ item, owner }]));
  const rows = (...kinds: readonly ItemKind[]) =>
    items
      .filter(({ item }) => kinds.includes(item.kind) && isStocked(item))
      .map((one) => stockRow(one, usesOf, context));
  return {
    tools: rows('tool'),
    aids: rows('aid'),
    parts: rows('part', 'fastener', 'connection'),
    consumables: rows('consumable'),
    partNumbers: byNumber(items),
  };
}

function isStocked(item: StockItem): boolean {
  switch (item.kind) {
    case 'part':
    case 'fastener':
      return item['part-number'] !== undefined || item['single-use'];
    case 'connection':
      return item['part-number'] !== undefined;
    default:
      return true;
  }
}

function stockRow(
  { item, owner }: Owned<StockItem>,
  usesOf: (item: Item) => readonly Use[],
  context: ManualContext,
): StockRow {
  const { manual, policy } = context;
  const pieces = piecesOf(item);
  return {
    anchor: rowAnchor(item, owner),
    item: itemLink(item, owner, itemName(item, pieces)),
    count: pieces,
    partNumber: item['part-number'],
    details: [...particulars(item, context), item.note && valuesInText(item.note, policy)].flatMap(
      (text) => (text ? [text] : []),
    ),
    when: item.when && conditionWords(item.when, manual.manual.settings.variants),
    owner: ownerName({ item, owner }, context),
    usedIn: usesOf(item).map(({ one }) => procedureLink(one)),
  };
}

function particulars(item: StockItem, { policy }: ManualContext): (string | undefined)[] {
  switch (item.kind) {
    case 'tool':
      return [
        item.size && boundValues(item.size),
        item.length && `length ${printByPolicy(item.length, policy)}`,
        item.extension && `extension ${printByPolicy(item.extension, policy)}`,
        item.lifts ? 'carries heavy parts' : undefined,
      ];
    case 'aid':
      return [item.lifts ? 'carries heavy parts' : undefined];
    case 'fastener':
      return [
        [item.thread, strengthOf(item)].filter(Boolean).join(', '),
        item['single-use'] ? 'once only' : undefined,
      ];
    case 'part':
      return [
        item.mass && printByPolicy(item.mass, policy),
        item['single-use'] ? 'once only' : undefined,
      ];
    case 'consumable':
      return [
        item.specification && boundValues(item.specification),
        item.containers.length === 0
          ? undefined
          : `sold in ${item.containers.flatMap(({ sizes }) => sizes.map(printAsWritten)).join(', ')}`,
      ];
    default:
      return [];
  }
}

/** Said where a manual has several machines, and of what a procedure brings along for itself. */
function ownerName({ owner }: Owned, { manual }: ManualContext): string | undefined {
  if (owner.kind === 'procedure') return manual.procedures.get(owner.id)?.procedure.front.title;
  const { machines } = manual.manual;
  return machines.size > 1 ? machines.get(owner.id)?.name : undefined;
}

function byNumber(items: readonly Owned<StockItem>[]): Stock['partNumbers'] {
  const numbers = new Map<string, PageLink[]>();
  for (const { item, owner } of items) {
    const number = item['part-number'];
    if (number === undefined) continue;
    const links = numbers.get(number) ?? [];
    links.push(itemLink(item, owner, itemName(item, piecesOf(item))));
    numbers.set(number, links);
  }
  return [...numbers]
    .sort(([a], [b]) => compareText(a, b))
    .map(([number, links]) => ({ number, items: links }));
}

function byName(a: Owned, b: Owned): number {
  return (
    compareText(itemName(a.item), itemName(b.item)) ||
    compareText(a.owner.id, b.owner.id) ||
    compareText(a.item.id, b.item.id)
  );
}

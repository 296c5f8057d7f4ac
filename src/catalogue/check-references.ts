import { verbSchema } from '../../schemas/directives.ts';
import { nearest } from '../source/index.ts';
import { itemsOfKind, mayHave } from './catalogue-for.ts';
import { checkOrder } from './check-order.ts';
import type { CatalogueFact } from './facts.ts';
import type { Catalogue, Item } from './model.ts';
import { overlapIn, positionsOf } from './pattern.ts';
import { type Reference, referencesOf } from './references.ts';

/**
 * What entries say of each other and of themselves: ids that are unknown or of a kind that does not fit,
 * patterns, verbs, and orders of work that have no end. `catalogue` is all that they may name; `checked` are the
 * entries to look at.
 */
export function checkReferences(
  catalogue: Catalogue,
  checked: ReadonlyMap<string, Item> = catalogue.items,
): readonly CatalogueFact[] {
  const items = [...checked.values()];
  return [
    ...items.flatMap((item) => [
      ...referencesOf(item).flatMap((reference) => checkReference(item, reference, catalogue)),
      ...checkPattern(item),
      ...checkVerbs(item),
    ]),
    ...checkOrder(catalogue, checked),
  ];
}

function checkReference(
  item: Item,
  { id, member, path, kinds }: Reference,
  catalogue: Catalogue,
): readonly CatalogueFact[] {
  const place = item.placeOf(path);
  const named = catalogue.items.get(id);
  if (named === undefined) {
    if (mayHave(catalogue, id)) return [];
    const near = nearest(id, itemsOfKind(catalogue, kinds)) ?? nearest(id, catalogue.items.keys());
    return [{ kind: 'unknown-item', id, place, machine: catalogue.id, ...(near && { near }) }];
  }
  if (kinds.includes(named.kind)) return [];
  return [{ kind: 'item-wrong-kind', id, place, found: named.kind, expected: kinds, member }];
}

function checkPattern(item: Item): readonly CatalogueFact[] {
  if (item.kind !== 'fastener' || item.pattern === undefined) return [];
  const place = item.placeOf('pattern');
  const positions = positionsOf(item.pattern);
  const overlap = overlapIn(item.pattern);
  return [
    ...(positions === item.count
      ? []
      : [{ kind: 'pattern-count' as const, place, positions, count: item.count }]),
    ...(overlap === undefined ? [] : [{ kind: 'pattern-overlap' as const, place, ...overlap }]),
  ];
}

function checkVerbs(item: Item): readonly CatalogueFact[] {
  if (item.kind !== 'hazard') return [];
  const check = (verb: string | undefined, path: string): readonly CatalogueFact[] => {
    if (verb === undefined || verbSchema.safeParse(verb).success) return [];
    const near = nearest(verb, verbSchema.options);
    return [{ kind: 'verb-unknown', place: item.placeOf(path), verb, ...(near && { near }) }];
  };
  return [
    ...item.raisedBy.flatMap(({ verb }, i) => check(verb, `raised-by.${i}.verb`)),
    ...item.first.flatMap(({ verb }, i) => check(verb, `first.${i}.verb`)),
  ];
}

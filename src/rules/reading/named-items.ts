import type { Catalogue, Item } from '../../catalogue/index.ts';
import { allActions, allBlocks, allSteps, type LinkedProcedure } from '../../link/index.ts';
import type { Block } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';

/** Ids of the items that a procedure names anywhere. */
const idsNamedBy = onceFor((one: LinkedProcedure): ReadonlySet<string> => new Set(idsIn(one)));

function* idsIn({ procedure }: LinkedProcedure): Generator<string> {
  const { front } = procedure;
  yield* front.tools;
  yield* front.consumables;
  yield* Object.keys(front.starts);
  yield* Object.keys(front.leaves);
  for (const action of allActions(procedure)) {
    yield action.item.id;
    for (const ref of action.with) yield ref.id;
  }
  for (const step of allSteps(procedure)) {
    for (const ref of [...step.tools, ...step.consumables]) yield ref.id;
  }
  for (const block of allBlocks(procedure)) yield* idsInBlock(block);
}

function* idsInBlock(block: Block): Generator<string> {
  if (block.type === 'hazard' && block.of !== undefined) yield block.of.id;
  if (block.type === 'torque' || block.type === 'fluid') yield block.item.id;
  if (block.type === 'figure')
    for (const { item } of block.callouts) if (item !== undefined) yield item.id;
  if (block.type === 'reverse') for (const ref of block.except) yield ref.id;
}

/** Ids of the items that an entry of the catalogue names. */
function idsNamedIn(item: Item): readonly string[] {
  const common = item.kind === 'hazard' ? [] : [...item.hazards, ...(item.in ? [item.in] : [])];
  switch (item.kind) {
    case 'fastener':
      return [...common, ...item.holds, ...item.behind, ...item.coat, ...item['renew-with']];
    case 'part':
      return [...common, ...item.behind, ...item.coat, ...item['renew-with']];
    case 'connection':
      return [
        ...common,
        ...item.behind,
        ...item.coat,
        ...[item.circuit, item.on].filter((id) => id !== undefined),
      ];
    case 'circuit':
      return [...common, ...item.drain, ...item.fill];
    case 'energy':
      return [...common, ...item['isolate-before']];
    case 'aid':
      return [...common, ...item.blocks];
    case 'hazard':
      return [...item.raisedBy, ...item.first].map((named) => named.item);
    default:
      return common;
  }
}

/** Entries that some procedure or some other entry names. */
export function namedItems(procedures: Iterable<LinkedProcedure>): ReadonlySet<Item> {
  const named = new Set<Item>();
  const seen = new Set<Catalogue>();
  for (const one of procedures) {
    for (const id of idsNamedBy(one)) add(named, one.catalogue, id);
    if (seen.has(one.catalogue)) continue;
    seen.add(one.catalogue);
    for (const item of one.catalogue.items.values()) {
      for (const id of idsNamedIn(item)) if (id !== item.id) add(named, one.catalogue, id);
    }
  }
  return named;
}

/** Entries that name one which a procedure names: bolts that hold a part, hazards that an action raises. */
export function partakers(procedures: Iterable<LinkedProcedure>): ReadonlySet<Item> {
  const found = new Set<Item>();
  for (const one of procedures) {
    const naming = namingIn(one.catalogue);
    for (const id of idsNamedBy(one)) {
      for (const item of naming.get(id) ?? []) found.add(item);
    }
  }
  return found;
}

/** The entries of a catalogue that name an id, by id. */
const namingIn = onceFor(({ items }: Catalogue): ReadonlyMap<string, readonly Item[]> => {
  const naming = new Map<string, Item[]>();
  for (const item of items.values()) {
    for (const id of idsNamedIn(item)) {
      const others = naming.get(id);
      if (others === undefined) naming.set(id, [item]);
      else others.push(item);
    }
  }
  return naming;
});

function add(named: Set<Item>, catalogue: Catalogue, id: string): void {
  const item = catalogue.items.get(id);
  if (item !== undefined) named.add(item);
}

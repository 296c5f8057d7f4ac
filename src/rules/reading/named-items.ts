import type { Catalogue, Item } from '../../catalogue/index.ts';
import { allActions, allBlocks, allSteps, type LinkedProcedure } from '../../link/index.ts';
import type { Block } from '../../syntax/index.ts';
import type { Examined } from '../rule.ts';
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

/** Entries that an entry which is looked at names, itself left out. */
export function* namedByEntries({ machines, entries, subjects }: Examined): Generator<Item> {
  const own = new Map(subjects.map(({ one }) => [one.procedure.file, one.catalogue]));
  const byFile = new Map(machines.map((machine) => [machine.file, machine]));
  for (const item of entries) {
    const catalogue = own.get(item.place.file) ?? byFile.get(item.place.file);
    for (const id of idsNamedIn(item)) {
      const named = id === item.id ? undefined : catalogue?.items.get(id);
      if (named !== undefined) yield named;
    }
  }
}

/** Entries that a procedure names, and those that name one of these: bolts that hold a part, hazards that it raises. */
export function* usedBy(one: LinkedProcedure): Generator<Item> {
  const naming = namingIn(one.catalogue);
  for (const id of idsNamedBy(one)) {
    const item = one.catalogue.items.get(id);
    if (item !== undefined) yield item;
    yield* naming.get(id) ?? [];
  }
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

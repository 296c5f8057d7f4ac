import type {
  Aid,
  Catalogue,
  Circuit,
  Connection,
  Energy,
  Fastener,
  Item,
  Part,
  StatefulItem,
} from '../catalogue/index.ts';

/** Which entries stand in the way of which: the catalogue's references, read from the other end. */
export interface Precedence {
  /** Fasteners that hold a part. */
  holding(part: Item): readonly Fastener[];
  /** Connections that belong to a part. */
  connectionsOn(part: Item): readonly Connection[];
  /** What must be off before an item can move. */
  inFrontOf(item: Item): readonly StatefulItem[];
  /** What an item closes in. */
  behind(item: Item): readonly StatefulItem[];
  /** Energy that must be isolated before work on an item. */
  isolationFor(item: Item): readonly Energy[];
  /** Aids that keep a part from going in. */
  aidsBlocking(part: Item): readonly Aid[];
  /** Circuits that moving an item opens: their drain and fill points, and connections in them. */
  circuitsOpenedBy(item: Item): readonly Circuit[];
  /** The assemblies an item is in, nearest first. */
  assembliesOf(item: Item): readonly Part[];
  /** Connections in a circuit. */
  connectionsIn(circuit: Circuit): readonly Connection[];
  /** The entries of ids that the catalogue has and the ledger keeps a state for. */
  entries(ids: readonly string[]): readonly StatefulItem[];
}

export function precedenceOf(catalogue: Catalogue): Precedence {
  const stateful = [...catalogue.items.values()].filter(isStateful);
  const entries = (ids: readonly string[]): readonly StatefulItem[] =>
    ids.flatMap((id) => {
      const item = catalogue.items.get(id);
      return item !== undefined && isStateful(item) ? [item] : [];
    });
  const kind = <K extends StatefulItem['kind']>(k: K) =>
    stateful.filter((item): item is Extract<StatefulItem, { kind: K }> => item.kind === k);

  const circuits = kind('circuit');
  const connections = kind('connection');
  const holding = invert(kind('fastener'), (one) => entries(one.holds));
  const on = invert(connections, (one) => entries(one.on === undefined ? [] : [one.on]));
  const behind = invert(stateful, (one) => entries(frontOf(one)));
  const isolation = invert(kind('energy'), (one) => entries(one['isolate-before']));
  const blocking = invert(kind('aid'), (one) => entries(one.blocks));
  const opening = invert(circuits, (one) => [
    ...entries([...one.drain, ...one.fill]),
    ...connections.filter((connection) => connection.circuit === one.id),
  ]);
  return {
    holding: (part) => holding.get(part) ?? [],
    connectionsOn: (part) => on.get(part) ?? [],
    inFrontOf: (item) => entries(frontOf(item)),
    behind: (item) => behind.get(item) ?? [],
    isolationFor: (item) => isolation.get(item) ?? [],
    aidsBlocking: (part) => blocking.get(part) ?? [],
    circuitsOpenedBy: (item) => opening.get(item) ?? [],
    assembliesOf: (item) => assemblies(item, catalogue),
    connectionsIn: (circuit) => connections.filter((one) => one.circuit === circuit.id),
    entries,
  };
}

export function isStateful(item: Item): item is StatefulItem {
  return item.kind !== 'tool' && item.kind !== 'consumable' && item.kind !== 'hazard';
}

const frontOf = (item: Item): readonly string[] => ('behind' in item ? item.behind : []);

function assemblies(item: Item, catalogue: Catalogue): readonly Part[] {
  const chain: Part[] = [];
  for (let id = assemblyOf(item); id !== undefined; ) {
    const outer = catalogue.items.get(id);
    if (outer?.kind !== 'part' || chain.includes(outer)) break;
    chain.push(outer);
    id = assemblyOf(outer);
  }
  return chain;
}

const assemblyOf = (item: Item): string | undefined => ('in' in item ? item.in : undefined);

function invert<T>(
  from: readonly T[],
  to: (one: T) => readonly Item[],
): ReadonlyMap<Item, readonly T[]> {
  const inverse = new Map<Item, T[]>();
  for (const one of from) {
    for (const target of new Set(to(one))) {
      const list = inverse.get(target);
      if (list === undefined) inverse.set(target, [one]);
      else list.push(one);
    }
  }
  return inverse;
}

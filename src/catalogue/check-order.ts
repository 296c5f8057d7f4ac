import type { Place } from '../../schemas/finding.ts';
import type { CatalogueFact } from './facts.ts';
import type { Catalogue, Item } from './model.ts';
import { type Edges, shortestCycle, stronglyConnected } from './strongly-connected.ts';

/** Which entry must go before which, or is part of which, and the place that says so. */
type Waits = ReadonlyMap<string, ReadonlyMap<string, Place>>;

/**
 * Orders of work that have no beginning: entries of which each must come off before another, round in a
 * circle, and assemblies that are parts of themselves. One fact for each such knot that touches `checked`.
 */
export function checkOrder(
  catalogue: Catalogue,
  checked: ReadonlyMap<string, Item>,
): readonly CatalogueFact[] {
  return [takingOff(catalogue), beingPartOf(catalogue)].flatMap((waits) => {
    const edges: Edges = (id) => waits.get(id)?.keys() ?? [];
    return stronglyConnected([...catalogue.items.keys()], edges)
      .filter((knot) => knot.some((id) => checked.has(id)))
      .flatMap((knot): CatalogueFact[] => {
        const chain = shortestCycle(knot, edges).map((id, i, ids) => {
          const next = ids[(i + 1) % ids.length] ?? id;
          const place = waits.get(id)?.get(next) ?? catalogue.items.get(id)?.place;
          return place && { item: id, place };
        });
        const told = chain.filter((link) => link !== undefined);
        const [first] = told;
        return first ? [{ kind: 'precedence-cycle', place: first.place, chain: told }] : [];
      });
  });
}

/** What waits for what to come off: a part for its fasteners and connections, all for what they are behind. */
function takingOff({ items }: Catalogue): Waits {
  const waits = new Waiting(items);
  for (const item of items.values()) {
    if (item.kind === 'fastener') {
      item.holds.forEach((part, i) => {
        waits.add(part, item.id, item.placeOf(`holds.${i}`));
      });
    }
    if (item.kind === 'connection' && item.on !== undefined) {
      waits.add(item.on, item.id, item.placeOf('on'));
    }
    if ('behind' in item) {
      item.behind.forEach((front, i) => {
        waits.add(item.id, front, item.placeOf(`behind.${i}`));
      });
    }
  }
  return waits.all;
}

function beingPartOf({ items }: Catalogue): Waits {
  const waits = new Waiting(items);
  for (const item of items.values()) {
    if (item.kind !== 'hazard' && item.in !== undefined) {
      waits.add(item.id, item.in, item.placeOf('in'));
    }
  }
  return waits.all;
}

class Waiting {
  readonly all = new Map<string, Map<string, Place>>();
  readonly #items: ReadonlyMap<string, Item>;

  constructor(items: ReadonlyMap<string, Item>) {
    this.#items = items;
  }

  add(id: string, before: string, place: Place): void {
    if (!this.#items.has(id) || !this.#items.has(before)) return;
    const own = this.all.get(id) ?? new Map<string, Place>();
    this.all.set(id, own);
    if (!own.has(before)) own.set(before, place);
  }
}

import type { Catalogue, Hazard, Item } from '../../catalogue/index.ts';
import { allBlocks, type LinkedManual, type LinkedProcedure } from '../../link/index.ts';
import type { Action, Block, HazardPanel } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';

/** A panel, an action or a perform, in the order in which a sheet prints them. */
export type Event =
  | { readonly is: 'panel'; readonly panel: HazardPanel }
  | { readonly is: 'action'; readonly action: Action }
  | { readonly is: 'perform'; readonly procedure: string };

export function* eventsIn({ procedure }: LinkedProcedure): Generator<Event> {
  for (const section of procedure.sections) yield* eventsOf(section.blocks);
}

function* eventsOf(blocks: readonly Block[]): Generator<Event> {
  for (const block of blocks) {
    switch (block.type) {
      case 'hazard':
        yield { is: 'panel', panel: block };
        yield* eventsOf(block.blocks);
        break;
      case 'prose':
        for (const action of block.actions) yield { is: 'action', action };
        break;
      case 'torque':
        // Its box stands beside the step, so what the block says comes with it and not after it.
        yield* eventsOf(block.blocks);
        if (block.action !== undefined) yield { is: 'action', action: block.action };
        break;
      case 'perform':
        yield { is: 'perform', procedure: block.procedure.id };
        break;
      case 'reverse':
        break;
      case 'steps':
        for (const inner of block.steps) yield* eventsOf(inner.blocks);
        break;
      case 'branch':
        for (const way of block.ways) yield* eventsOf(way.blocks);
        break;
      default:
        yield* eventsOf(block.blocks);
    }
  }
}

/** The hazards that an action raises: those of its item, and those that name it. */
export function raisedBy(action: Action, { catalogue }: LinkedProcedure): Hazard[] {
  const item = catalogue.items.get(action.item.id);
  const own = item === undefined || item.kind === 'hazard' ? [] : item.hazards;
  const about = hazardsAbout(catalogue).get(action.item.id) ?? [];
  return about.filter(
    (hazard) =>
      own.includes(hazard.id) ||
      hazard.raisedBy.some(
        (raised) =>
          raised.item === action.item.id &&
          (raised.verb === undefined || raised.verb === action.verb),
      ),
  );
}

/** The hazards that name an item or that it names, by its id; in the order of the catalogue. */
const hazardsAbout = onceFor(({ items }: Catalogue): ReadonlyMap<string, readonly Hazard[]> => {
  const naming = new Map<string, string[]>();
  for (const item of items.values()) {
    if (item.kind === 'hazard') continue;
    for (const id of item.hazards) naming.set(id, [...(naming.get(id) ?? []), item.id]);
  }
  const about = new Map<string, Hazard[]>();
  for (const hazard of items.values()) {
    if (hazard.kind !== 'hazard') continue;
    const raising = hazard.raisedBy.map((raised) => raised.item);
    for (const id of new Set([...raising, ...(naming.get(hazard.id) ?? [])])) {
      const others = about.get(id);
      if (others === undefined) about.set(id, [hazard]);
      else others.push(hazard);
    }
  }
  return about;
});

/** Whether a panel tells of a hazard: by its id, or in the same words. */
export function tellsOf(panel: HazardPanel, hazard: Hazard, owner: LinkedProcedure): boolean {
  const named: Item | undefined = panel.of && owner.item(panel.of);
  if (named !== undefined)
    return named === hazard || (named.kind === 'hazard' && sameWords(named.hazard, hazard.hazard));
  return panel.hazard !== undefined && sameWords(panel.hazard.text, hazard.hazard);
}

/** All panels of a procedure and of those that it performs, with their owners. */
export function panelsWithin(
  manual: LinkedManual,
  id: string,
  seen: Set<string> = new Set(),
): { panel: HazardPanel; owner: LinkedProcedure }[] {
  const owner = manual.procedures.get(id);
  if (owner === undefined || seen.has(id)) return [];
  seen.add(id);
  return [...allBlocks(owner.procedure)].flatMap((block) => {
    if (block.type === 'hazard') return [{ panel: block, owner }];
    return block.type === 'perform' ? panelsWithin(manual, block.procedure.id, seen) : [];
  });
}

const sameWords = (a: string, b: string): boolean => plain(a) === plain(b);
const plain = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

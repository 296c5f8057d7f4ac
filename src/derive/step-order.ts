import { type Item, referencesOf } from '../catalogue/index.ts';
import { allBlocks, allSteps, type LinkedProcedure, within } from '../link/index.ts';
import type { Action, Block, Procedure, Ref, Step } from '../syntax/index.ts';
import { actionsOf } from './gather.ts';

/** What a piece of work says about its place among the others. */
export interface Turn {
  /** Ids of the step and of the steps in it. */
  readonly ids: ReadonlySet<string>;
  /** Ids of the steps that must be done before it. */
  readonly needs: ReadonlySet<string>;
  /** The items that it acts on, with the parts and circuits that they belong to; undefined where it may bear on anything. */
  readonly items: readonly Tied[] | undefined;
}

/** The turn of a step, or of blocks that stand beside the steps. */
export function turnOf(blocks: readonly Block[], one: LinkedProcedure, step?: Step): Turn {
  const inside = [...within(blocks)];
  const steps = inside.flatMap((block) => (block.type === 'steps' ? block.steps : []));
  const all = step === undefined ? steps : [step, ...steps];
  const ids = new Set(all.flatMap(({ id }) => id?.id ?? []));
  const needs = new Set(needsIn(all, inside).map(({ id }) => id));
  const needed = neededIn(one.procedure);
  const isPlaced = needs.size > 0 || [...ids].some((id) => needed.has(id));
  // Beside the steps it speaks of all that follows.
  const isForAll = step === undefined && blocks.some(({ type }) => type === 'needs');
  return { ids, needs, items: isForAll ? undefined : itemsOf(inside, one, isPlaced) };
}

/**
 * True where a piece of work cannot begin before an earlier one is over: it needs it; both touch the same
 * item or items that the catalogue ties together; or one of the two may bear on anything.
 */
export function mustFollow(later: Turn, earlier: Turn): boolean {
  if ([...later.needs].some((id) => earlier.ids.has(id))) return true;
  const others = earlier.items;
  if (later.items === undefined || others === undefined) return true;
  return later.items.some((a) => others.some((b) => areTied(a, b)));
}

/** An item with every id that ties it to others. */
interface Tied {
  readonly id: string;
  /** What it names: the part that it holds, what it is behind. */
  readonly named: ReadonlySet<string>;
  /** Of these the parts and the circuit that it belongs to. */
  readonly owners: ReadonlySet<string>;
}

/** One and the same, one that names the other, or two that belong to one part or circuit. */
function areTied(a: Tied, b: Tied): boolean {
  if (a.id === b.id || a.named.has(b.id) || b.named.has(a.id)) return true;
  return [...a.owners].some((id) => b.owners.has(id));
}

const ownerMembers = ['holds', 'on', 'in', 'circuit'];

function tied(item: Item, one: LinkedProcedure): Tied {
  const references = referencesOf(item);
  const owners = references.filter(({ member }) => ownerMembers.includes(member));
  return {
    id: item.id,
    named: new Set(references.map(({ id }) => id)),
    owners: new Set([...owners.map(({ id }) => id), ...assembliesOf(item, one)]),
  };
}

function assembliesOf(item: Item, one: LinkedProcedure): ReadonlySet<string> {
  const chain = new Set<string>();
  for (let outer: Item | undefined = item; outer !== undefined && 'in' in outer; ) {
    if (outer.in === undefined || chain.has(outer.in)) break;
    chain.add(outer.in);
    outer = one.item(outer.in);
  }
  return chain;
}

/**
 * The catalogue orders work on fasteners, parts and connections, and draining. Work that switches,
 * isolates, fills, bleeds or performs something may bear on anything, and so may work that names no item
 * or only aids, tools and consumables, unless a `needs=` gives it its place.
 */
function itemsOf(
  inside: readonly Block[],
  one: LinkedProcedure,
  isPlaced: boolean,
): readonly Tied[] | undefined {
  if (inside.some(({ type }) => type === 'perform' || type === 'reverse')) return undefined;
  const items = new Map<string, Item>();
  for (const action of inside.flatMap(actionsOf)) {
    const item = one.item(action.item);
    const reach = item && reachOf(action, item);
    if (item === undefined || reach === 'anything') return undefined;
    if (reach === 'unknown' && !isPlaced) return undefined;
    items.set(item.id, item);
  }
  if (items.size === 0 && !isPlaced) return undefined;
  return [...items.values()].map((item) => tied(item, one));
}

function reachOf({ verb }: Action, { kind }: Item): 'tied' | 'unknown' | 'anything' {
  switch (kind) {
    case 'fastener':
    case 'part':
    case 'connection':
      return 'tied';
    case 'circuit':
      return verb === 'fill' || verb === 'bleed' ? 'anything' : 'tied';
    case 'aid':
    case 'tool':
    case 'consumable':
      return 'unknown';
    case 'control':
    case 'energy':
    case 'hazard':
      return 'anything';
  }
}

function needsIn(steps: readonly Step[], blocks: Iterable<Block>): readonly Ref[] {
  const stated = [...blocks].flatMap((block) => (block.type === 'needs' ? block.steps : []));
  return [...steps.flatMap((step) => step.needs), ...stated];
}

const needed = new WeakMap<Procedure, ReadonlySet<string>>();

/** Ids of the steps that others need. */
function neededIn(procedure: Procedure): ReadonlySet<string> {
  const known = needed.get(procedure);
  if (known !== undefined) return known;
  const refs = needsIn([...allSteps(procedure)], allBlocks(procedure));
  const ids = new Set(refs.map(({ id }) => id));
  needed.set(procedure, ids);
  return ids;
}

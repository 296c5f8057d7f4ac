import type { Item, Part } from '../catalogue/index.ts';
import { blocksIn, type LinkedProcedure } from '../link/index.ts';
import {
  type Action,
  type Block,
  isLifting,
  type Ref,
  type Step,
  type When,
} from '../syntax/index.ts';
import { countOf } from './count-meant.ts';
import { fetchedItems } from './fetched-items.ts';
import { type FluidFact, fluidFacts } from './fluid-facts.ts';
import { actionsOf } from './gather.ts';
import { instancesMeant } from './instances.ts';
import { type LoosenedFact, loosenedFacts } from './loosened.ts';
import { isFittedNew, isScrapped } from './parts-to-pull.ts';
import { type TorqueFact, torqueFacts } from './torque-facts.ts';

/** What the text of a step, or of a way through one, asks for: without the steps and the ways inside it. */
export interface WorkFacts {
  readonly tools: readonly Pieces[];
  readonly consumables: readonly Pieces[];
  readonly torques: readonly TorqueFact[];
  readonly loosened: readonly LoosenedFact[];
  readonly fluids: readonly FluidFact[];
  /** Checks and measurements that have a limit, and measurements without. */
  readonly readings: readonly Reading[];
  readonly scrapped: readonly Pieces[];
  readonly fitted: readonly Pieces[];
  /** Items that go in one way round. */
  readonly facing: readonly Asked[];
  /** Parts with a mass that are lifted out or in. */
  readonly lifted: readonly Asked<Part>[];
}

/** What a step's margin shows. */
export interface StepFacts extends WorkFacts {
  readonly people: number;
  readonly time: string | undefined;
  readonly wait: string | undefined;
}

export interface Reading {
  readonly action: Action;
  readonly item: Item | undefined;
}

/** An item that actions ask something of, with the condition of each of them. */
export interface Asked<T extends Item = Item> {
  readonly item: T;
  readonly whens: readonly (When | undefined)[];
}

export interface Pieces extends Asked {
  readonly count: number;
}

export function stepFacts(step: Step, one: LinkedProcedure): StepFacts {
  const named = [...step.tools, ...step.consumables];
  return {
    ...workFacts(step.blocks, one, named),
    people: step.people,
    time: step.time?.text,
    wait: step.wait?.text,
  };
}

/** Instances at which a step is done, one after the other: left, right. None where it is done at one place. */
export function stepInstances(step: Step, one: LinkedProcedure): readonly string[] {
  const actions = [...ownBlocks(step.blocks, ['steps'])].flatMap(actionsOf);
  const instances = new Set(
    actions.flatMap((action) => {
      const item = one.item(action.item);
      return item === undefined ? [] : instancesMeant(action, item);
    }),
  );
  return instances.size < 2 ? [] : [...instances];
}

/** `fetchedBeside` are tools and consumables that are asked for beside the actions. */
export function workFacts(
  parts: readonly Block[],
  one: LinkedProcedure,
  fetchedBeside: readonly Ref[] = [],
): WorkFacts {
  const blocks = [...ownBlocks(parts, ['steps', 'branch', 'guarded'])];
  const actions = blocks.flatMap(actionsOf);
  const itemsOf = (refs: readonly Ref[]): Item[] => refs.flatMap((ref) => one.item(ref) ?? []);
  const named = new Map<Item, Pieces>(
    itemsOf(fetchedBeside).map((item) => [item, { item, count: 1, whens: [undefined] }]),
  );
  for (const action of actions) {
    for (const item of fetchedItems(action, one)) {
      const isMeant = item.id === action.item.id;
      const known = named.get(item);
      const count = Math.max(known?.count ?? 1, isMeant ? countOf(action, item) : 1);
      named.set(item, { item, count, whens: [...(known?.whens ?? []), action.when] });
    }
  }
  const fetched = [...named.values()];
  const pieces = (picked: readonly Action[]): Pieces[] =>
    picked.flatMap((action) =>
      itemsOf([action.item]).map((item) => ({
        item,
        count: countOf(action, item),
        whens: [action.when],
      })),
    );
  const asked = (picked: readonly Action[]): Asked[] =>
    [...Map.groupBy(picked, (action) => one.item(action.item))].flatMap(([item, all]) =>
      item === undefined ? [] : [{ item, whens: all.map((action) => action.when) }],
    );
  return {
    tools: fetched.filter(({ item }) => item.kind === 'tool' || item.kind === 'aid'),
    consumables: fetched.filter(
      ({ item }) => item.kind === 'consumable' || item.kind === 'circuit',
    ),
    torques: torqueFacts(actions, blocks, one),
    loosened: loosenedFacts(actions, one),
    fluids: fluidFacts(actions, blocks, one),
    readings: actions.filter(isReading).map((action) => ({ action, item: one.item(action.item) })),
    scrapped: pieces(actions.filter((a) => itemsOf([a.item]).some((item) => isScrapped(a, item)))),
    fitted: pieces(actions.filter(isFittedNew)),
    facing: asked(actions.filter(isFitting)).filter(
      ({ item }) => 'facing' in item && item.facing !== undefined,
    ),
    lifted: asked(actions.filter(isLifting)).flatMap(({ item, whens }) =>
      item.kind === 'part' && item.mass !== undefined ? [{ item, whens }] : [],
    ),
  };
}

/** Blocks of a step, outer before inner, without those of some types and all in them. */
function* ownBlocks(blocks: readonly Block[], without: readonly Block['type'][]): Generator<Block> {
  for (const block of blocks) {
    if (without.includes(block.type)) continue;
    yield block;
    yield* ownBlocks(blocksIn(block), without);
  }
}

const isReading = ({ verb, value, limit }: Action): boolean =>
  verb === 'measure' || (verb === 'check' && (value !== undefined || limit !== undefined));

const isFitting = ({ verb }: Action): boolean =>
  verb === 'install' || verb === 'replace' || verb === 'return';

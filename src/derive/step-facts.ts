import type { Item, Part } from '../catalogue/index.ts';
import { blocksIn, type LinkedProcedure } from '../link/index.ts';
import type { Action, Block, Ref, Step } from '../syntax/index.ts';
import { countOf } from './count-meant.ts';
import { type FluidFact, fluidFacts } from './fluid-facts.ts';
import { actionsOf } from './gather.ts';
import { instancesMeant } from './instances.ts';
import { isFittedNew, isScrapped } from './parts-to-pull.ts';
import { fetchedItems } from './pull-lists.ts';
import { type TorqueFact, torqueFacts } from './torque-facts.ts';

/** What the text of a step, or of a way through one, asks for: without the steps and the ways inside it. */
export interface WorkFacts {
  readonly tools: readonly Pieces[];
  readonly consumables: readonly Pieces[];
  readonly torques: readonly TorqueFact[];
  readonly fluids: readonly FluidFact[];
  /** Checks and measurements that have a limit, and measurements without. */
  readonly readings: readonly Reading[];
  readonly scrapped: readonly Pieces[];
  readonly fitted: readonly Pieces[];
  /** Parts with a mass that are lifted out or in. */
  readonly lifted: readonly Part[];
}

/** What a step's margin shows. */
export interface StepFacts extends WorkFacts {
  readonly people: number;
  readonly time: string | undefined;
}

export interface Reading {
  readonly action: Action;
  readonly item: Item | undefined;
}

export interface Pieces {
  readonly item: Item;
  readonly count: number;
}

export function stepFacts(step: Step, one: LinkedProcedure): StepFacts {
  const named = [...step.tools, ...step.consumables];
  return {
    ...workFacts(step.blocks, one, named),
    people: step.people,
    time: step.time?.text,
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
  const named = new Map(itemsOf(fetchedBeside).map((item) => [item, 1]));
  for (const action of actions) {
    for (const item of fetchedItems(action, one)) {
      const isMeant = item.id === action.item.id;
      named.set(item, Math.max(named.get(item) ?? 1, isMeant ? countOf(action, item) : 1));
    }
  }
  const fetched = [...named].map(([item, count]) => ({ item, count }));
  const pieces = (picked: readonly Action[]): Pieces[] =>
    picked.flatMap((action) =>
      itemsOf([action.item]).map((item) => ({ item, count: countOf(action, item) })),
    );
  return {
    tools: fetched.filter(({ item }) => item.kind === 'tool' || item.kind === 'aid'),
    consumables: fetched.filter(
      ({ item }) => item.kind === 'consumable' || item.kind === 'circuit',
    ),
    torques: torqueFacts(actions, blocks, one),
    fluids: fluidFacts(actions, blocks, one),
    readings: actions.filter(isReading).map((action) => ({ action, item: one.item(action.item) })),
    scrapped: pieces(actions.filter((a) => itemsOf([a.item]).some((item) => isScrapped(a, item)))),
    fitted: pieces(actions.filter(isFittedNew)),
    lifted: [...new Set(itemsOf(actions.filter(isLifting).map((action) => action.item)))].flatMap(
      (item) => (item.kind === 'part' && item.mass !== undefined ? [item] : []),
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

const isReading = ({ verb, value }: Action): boolean =>
  verb === 'measure' || (verb === 'check' && value !== undefined);

const isLifting = ({ verb }: Action): boolean =>
  ['remove', 'install', 'replace', 'set-aside', 'return'].includes(verb);

import type { Pattern } from '../../schemas/catalogue.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Action, Block, TorqueBlock, When } from '../syntax/index.ts';
import { instancesMeant, instancesOf, piecesAtEach } from './instances.ts';
import { isTorqued, type Torqued } from './items-with-figures.ts';
import { patternMeant } from './pattern-meant.ts';
import { type WrenchFact, wrenchFact } from './wrench-setting.ts';

export interface TorqueFact {
  readonly item: Torqued;
  /** Pieces, at each instance where there are instances. */
  readonly count: number;
  /** Where they are: left, right. */
  readonly instances: readonly string[];
  /** True where the step does not tighten it, but checks that it is tight. */
  readonly isCheck: boolean;
  /** True where the block form asks for a record of each stage. */
  readonly isRecorded: boolean;
  /** Where all pieces are tightened together, the pattern that gives their order. */
  readonly pattern: Pattern | undefined;
  /** Where the wrench does not show the torque at the bolt. */
  readonly wrench: WrenchFact | undefined;
  readonly when: When | undefined;
}

/** The torques that some actions of a step and the blocks in it ask for, each item once. */
export function torqueFacts(
  actions: readonly Action[],
  blocks: readonly Block[],
  one: LinkedProcedure,
): TorqueFact[] {
  const shown = blocks.filter((block) => block.type === 'torque');
  const recorded = new Map<string, TorqueBlock>(shown.map((block) => [block.item.id, block]));
  const facts = new Map<string, TorqueFact>();
  for (const action of actions) {
    const item = one.item(action.item);
    if (action.verb !== 'torque' || !isTorqued(item)) continue;
    const before = facts.get(item.id);
    const isRecorded = recorded.has(item.id);
    const when = before ? undefined : action.when;
    const amount = amountOf(action, item, before);
    facts.set(item.id, {
      item,
      ...amount,
      isCheck: false,
      isRecorded,
      pattern: patternMeant(item, amount.count),
      wrench: before?.wrench ?? wrenchFact(action, one),
      when,
    });
  }
  for (const block of shown) {
    const item = one.item(block.item);
    if (!isTorqued(item) || facts.has(item.id)) continue;
    facts.set(item.id, shownTorque(item, block));
  }
  for (const action of actions) {
    const item = one.item(action.item);
    if (action.verb !== 'check' || action.value !== undefined || action.limit !== undefined)
      continue;
    if (!isTorqued(item) || facts.has(item.id)) continue;
    const { when } = action;
    const plain = { isCheck: true, isRecorded: false, pattern: undefined, wrench: undefined };
    facts.set(item.id, { item, ...amountOf(action, item), ...plain, when });
  }
  return [...facts.values()];
}

/** What a torque block shows where no action of the step speaks of the item. */
export function shownTorque(item: Torqued, { when }: TorqueBlock): TorqueFact {
  const amount = { count: piecesAtEach(item), instances: instancesOf(item) };
  const pattern = patternMeant(item, amount.count);
  return { item, ...amount, isCheck: false, isRecorded: true, pattern, wrench: undefined, when };
}

/** What an action adds to those before it: further instances, or further pieces at the same ones. */
function amountOf(
  action: Action,
  item: Torqued,
  before?: TorqueFact,
): Pick<TorqueFact, 'count' | 'instances'> {
  const all = piecesAtEach(item);
  const asked = Math.min(all, action.qty?.count ?? all);
  const meant = instancesMeant(action, item);
  if (before === undefined) return { count: asked, instances: meant };
  const known = new Set(before.instances);
  const isElsewhere = meant.length > 0 && meant.every((instance) => !known.has(instance));
  return {
    count: isElsewhere ? Math.max(before.count, asked) : Math.min(all, before.count + asked),
    instances: instancesOf(item).filter(
      (instance) => known.has(instance) || meant.includes(instance),
    ),
  };
}

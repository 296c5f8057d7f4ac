import type { Part } from '../../catalogue/index.ts';
import { programOf } from '../../ledger/index.ts';
import { allActions, blocksIn, type LinkedManual, type LinkedProcedure } from '../../link/index.ts';
import { type Action, type Block, isLifting, type Ref, type Step } from '../../syntax/index.ts';
import { AidsOn, isLiftingAid, presenceOf } from './aids-on.ts';

/** A part that is lifted out or in, and who and what helps. */
export interface Lift {
  readonly action: Action;
  readonly part: Part;
  readonly people: number;
  /** Whether a lifting aid helps on all machines and ways through for which the part is lifted. */
  readonly aided: 'all' | 'some' | 'none';
}

/**
 * Every time that a procedure's own text lifts a part with a mass, in order. `expanded` is its manual with every
 * `::reverse` written out; what stands only there is not told.
 */
export function liftsIn(one: LinkedProcedure, expanded: LinkedManual): readonly Lift[] {
  const own = new Set([...allActions(one.procedure)].filter((action) => liftedBy(action, one)));
  const all = expanded.procedures.get(one.procedure.id);
  if (own.size === 0 || all === undefined) return [];
  const { space } = expanded.manual;
  const stepsAt = stepsAround(one);
  const isAidedThroughout = one.procedure.front.tools.some((id) => isAid({ id }, one));
  const aids = new AidsOn(expanded);
  aids.begin(one);
  const lifts = new Map<Action, Lift>();
  for (const op of programOf(all, all.procedure.sections, space, space.all)) {
    aids.follow(op, all);
    const lifted = op.type === 'act' && own.has(op.action) ? liftedBy(op.action, one) : undefined;
    if (op.type !== 'act' || lifted === undefined) continue;
    const { action } = op;
    const steps = stepsAt.get(action) ?? [];
    const named: readonly Ref[] = [...action.with, ...steps.flatMap((step) => step.tools)];
    const aided =
      isAidedThroughout || named.some((ref) => isAid(ref, one))
        ? 'all'
        : aids.covers(space.and(op.under, presenceOf(lifted, space)));
    const before = lifts.get(action)?.aided ?? aided;
    lifts.set(action, {
      action,
      part: lifted,
      people: Math.max(one.procedure.front.people ?? 1, ...steps.map((step) => step.people)),
      // What is repeated is gone through more than once.
      aided: before === aided ? aided : 'some',
    });
  }
  return [...lifts.values()];
}

/** The part with a mass that an action lifts. */
function liftedBy(action: Action, one: LinkedProcedure): Part | undefined {
  const item = isLifting(action) ? one.item(action.item) : undefined;
  return item?.kind === 'part' && item.mass !== undefined ? item : undefined;
}

function isAid({ id }: Pick<Ref, 'id'>, one: LinkedProcedure): boolean {
  const item = one.item(id);
  return item !== undefined && isLiftingAid(item);
}

/** The steps that each action stands in, outer ones first. */
function stepsAround({ procedure }: LinkedProcedure): ReadonlyMap<Action, readonly Step[]> {
  const found = new Map<Action, readonly Step[]>();
  const walk = (blocks: readonly Block[], steps: readonly Step[]): void => {
    for (const block of blocks) {
      if (block.type === 'prose') for (const action of block.actions) found.set(action, steps);
      if (block.type === 'steps')
        for (const step of block.steps) walk(step.blocks, [...steps, step]);
      else walk(blocksIn(block), steps);
    }
  };
  for (const { blocks } of procedure.sections) walk(blocks, []);
  return found;
}

import type { Circuit, Consumable } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Action, Block, FluidBlock, When } from '../syntax/index.ts';

export interface FluidFact {
  readonly circuit: Circuit;
  /** Undefined where it is only shown. */
  readonly verb: 'drain' | 'fill' | undefined;
  /** As the action says it, when not the whole. */
  readonly amount: string | undefined;
  /** Parts of the mix that the action names as what is poured in, by the name of the consumable: then it is not the mix. */
  readonly poured: readonly Consumable[];
  /** True where the block form asks for all that is known of the fluid. */
  readonly isShown: boolean;
  readonly when: Pick<When, 'condition'> | undefined;
}

/** The fluids that some actions of a step and the blocks in it drain, fill or show. */
export function fluidFacts(
  actions: readonly Action[],
  blocks: readonly Block[],
  one: LinkedProcedure,
): FluidFact[] {
  const shown = blocks.filter((block) => block.type === 'fluid');
  const facts = new Map<string, FluidFact>();
  for (const action of actions) {
    const circuit = one.item(action.item);
    if (circuit?.kind !== 'circuit' || (action.verb !== 'drain' && action.verb !== 'fill'))
      continue;
    const { verb } = action;
    const key = `${verb} ${circuit.id}`;
    // Where several actions do it, the box stands for all of them.
    const when = facts.has(key) ? undefined : action.when;
    const isShown = shown.some(({ item }) => item.id === circuit.id);
    const amount = action.amount?.text;
    const poured = verb === 'fill' ? partsPoured(circuit, action, one) : [];
    facts.set(key, { circuit, verb, amount, poured, isShown, when });
  }
  for (const block of shown) {
    const circuit = one.item(block.item);
    if (circuit?.kind !== 'circuit') continue;
    const isHandled = [...facts.values()].some((fact) => fact.circuit === circuit);
    if (!isHandled) facts.set(circuit.id, shownFluid(circuit, block));
  }
  return [...facts.values()];
}

/** What a fluid block shows where no action of the step speaks of the circuit, and so none says for which variants it is there. */
export function shownFluid(circuit: Circuit, block: FluidBlock): FluidFact {
  const when = block.when ?? (circuit.when && { condition: circuit.when });
  return { circuit, verb: undefined, amount: undefined, poured: [], isShown: true, when };
}

/** Parts of a mix that an action pours in by themselves. */
export function partsPoured(circuit: Circuit, action: Action, one: LinkedProcedure): Consumable[] {
  const parts = circuit.mix.map(({ name }) => name.toLowerCase());
  return action.with.flatMap((ref) => {
    const item = one.item(ref);
    return item?.kind === 'consumable' && parts.includes(item.name.toLowerCase()) ? [item] : [];
  });
}

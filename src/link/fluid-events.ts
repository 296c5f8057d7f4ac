import type { Place } from '../../schemas/finding.ts';
import type { Circuit, Connection } from '../catalogue/index.ts';
import { parseQuantity, type Quantity } from '../quantity/index.ts';
import type { Action, Block, Ref, Section, When } from '../syntax/index.ts';
import type { LinkedManual, LinkedProcedure } from './linked.ts';
import { sectionsFrom } from './sections-from.ts';

/** Something that lets fluid out of a circuit or into it. */
export interface FluidEvent {
  readonly circuit: Circuit;
  readonly does: 'drain' | 'lose' | 'fill';
  readonly action: Action;
  /** The line that is opened, where fluid is lost. */
  readonly line: Connection | undefined;
  /** Undefined for all of it, or to the mark. */
  readonly amount: Quantity | undefined;
  /** True where an amount is written that cannot be read, so that nothing can be said. */
  readonly isUnclear: boolean;
  /** `maybe` depends on the machine or on what is found; `often` is done once or more. */
  readonly sureness: 'sure' | 'maybe' | 'often';
  /** Of a performed procedure the `::perform`, else the action. */
  readonly place: Place;
  /** Of a performed procedure, its id. */
  readonly performed: string | undefined;
}

/** What a procedure drains, loses and fills in the order of work, procedures that it performs included. */
export function fluidEvents(one: LinkedProcedure, manual: LinkedManual): readonly FluidEvent[] {
  return [...new Walk(manual).whole(one, 'sure')];
}

type Sureness = FluidEvent['sureness'];

class Walk {
  readonly #manual: LinkedManual;
  readonly #open = new Set<string>();

  constructor(manual: LinkedManual) {
    this.#manual = manual;
  }

  whole(one: LinkedProcedure, sureness: Sureness): Generator<FluidEvent> {
    return this.#sections(one, one.procedure.sections, one.procedure.id, sureness);
  }

  /** A procedure, or a section of one, that performs itself is cut where it comes round. */
  *#sections(
    one: LinkedProcedure,
    sections: readonly Section[],
    key: string,
    sureness: Sureness,
  ): Generator<FluidEvent> {
    if (this.#open.has(key)) return;
    this.#open.add(key);
    for (const { blocks } of sections) yield* this.#blocks(one, blocks, sureness);
    this.#open.delete(key);
  }

  *#blocks(
    one: LinkedProcedure,
    blocks: readonly Block[],
    sureness: Sureness,
  ): Generator<FluidEvent> {
    for (const block of blocks) yield* this.#block(one, block, sureness);
  }

  *#block(one: LinkedProcedure, block: Block, sureness: Sureness): Generator<FluidEvent> {
    switch (block.type) {
      case 'prose':
        for (const action of block.actions)
          yield* eventsOf(one, action, narrowed(sureness, action.when));
        return;
      case 'steps':
        for (const step of block.steps)
          yield* this.#blocks(one, step.blocks, narrowed(sureness, step.when));
        return;
      case 'branch':
        for (const way of block.ways) yield* this.#blocks(one, way.blocks, 'maybe');
        return;
      case 'repeat':
        yield* this.#blocks(one, block.blocks, sureness === 'maybe' ? 'maybe' : 'often');
        return;
      case 'perform':
        yield* this.#performed(block, narrowed(sureness, block.when));
        return;
      case 'needs':
      case 'figure':
        yield* this.#blocks(one, block.blocks, sureness);
        return;
      default:
        yield* this.#blocks(one, block.blocks, narrowed(sureness, block.when));
    }
  }

  *#performed(
    { procedure, part, place }: Extract<Block, { type: 'perform' }>,
    sureness: Sureness,
  ): Generator<FluidEvent> {
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return;
    const inside = narrowed(sureness, target.procedure.when);
    for (const event of this.#part(target, part, inside))
      yield { ...event, place, performed: procedure.id };
  }

  #part(target: LinkedProcedure, part: Ref | undefined, sureness: Sureness): Iterable<FluidEvent> {
    if (part === undefined) return this.whole(target, sureness);
    const section = target.section(part);
    if (section === undefined) return [];
    const key = `${target.procedure.id}#${part.id}`;
    return this.#sections(target, sectionsFrom(target, section), key, sureness);
  }
}

const narrowed = (sureness: Sureness, when: When | undefined): Sureness =>
  when === undefined ? sureness : 'maybe';

function* eventsOf(
  one: LinkedProcedure,
  action: Action,
  sureness: Sureness,
): Generator<FluidEvent> {
  const item = one.item(action.item);
  const { place } = action;
  const common = { action, place, performed: undefined };
  if (item?.kind === 'circuit' && (action.verb === 'drain' || action.verb === 'fill')) {
    const amount = action.amount && parseQuantity(action.amount.text).value;
    const isUnclear = action.amount !== undefined && amount === undefined;
    yield {
      ...common,
      circuit: item,
      does: action.verb,
      line: undefined,
      amount,
      isUnclear,
      sureness,
    };
  }
  if (item?.kind === 'connection' && action.verb === 'disconnect' && item.circuit !== undefined) {
    const circuit = one.item(item.circuit);
    if (circuit?.kind !== 'circuit' || item.loss === undefined) return;
    const lost = item.when === undefined ? sureness : 'maybe';
    yield {
      ...common,
      circuit,
      does: 'lose',
      line: item,
      amount: item.loss,
      isUnclear: false,
      sureness: lost,
    };
  }
}

import { resolveCondition, type Space, type VariantSet } from '../../applicability/index.ts';
import type { Item } from '../../catalogue/index.ts';
import { type Op, programOf } from '../../ledger/index.ts';
import { type LinkedManual, type LinkedProcedure, sectionsFrom } from '../../link/index.ts';
import type { Perform, Section } from '../../syntax/index.ts';
import { onceFor } from './once-for.ts';

/** For which machines and findings lifting aids are on, as the work goes along. */
export class AidsOn {
  /** Those put on since the beginning, and still on. */
  readonly #on = new Map<Item, VariantSet>();
  /** Those taken off at some time since then. */
  readonly #off = new Map<Item, VariantSet>();
  readonly #manual: LinkedManual;
  readonly #space: Space;

  /** None are on at the beginning. */
  constructor(manual: LinkedManual) {
    this.#manual = manual;
    this.#space = manual.manual.space;
  }

  /** Puts on those that a procedure finds on when it begins. */
  begin(one: LinkedProcedure): void {
    for (const [id, state] of Object.entries(one.procedure.front.starts)) {
      const isOn = typeof state === 'string' ? state === 'fitted' : (state.fitted ?? 0) > 0;
      const item = one.item(id);
      if (isOn && item !== undefined && isLiftingAid(item)) this.#fit(item, this.#space.all);
    }
  }

  /** Puts on and takes off what an operation in the text of a procedure does. */
  follow(op: Op, one: LinkedProcedure): void {
    if (op.type === 'perform') {
      const work = movesOf(this.#manual).of(op.perform);
      if (work !== undefined) this.#perform(work, op.under);
    }
    if (op.type !== 'act') return;
    const item = one.item(op.action.item);
    if (item === undefined || !isLiftingAid(item)) return;
    if (op.action.verb === 'fit') this.#fit(item, op.under);
    if (op.action.verb === 'withdraw') this.#withdraw(item, op.under);
  }

  /** For how many of them some lifting aid is on. */
  covers(under: VariantSet): 'all' | 'some' | 'none' {
    const space = this.#space;
    const on = [...this.#on.values()].reduce((all, set) => space.or(all, set), space.none);
    if (space.covers(on, under)) return 'all';
    return space.and(on, under) === space.none ? 'none' : 'some';
  }

  /** Other work is done at this point, for those in `under`. */
  #perform(work: AidsOn, under: VariantSet): void {
    for (const [item, off] of work.#off) this.#withdraw(item, this.#space.and(off, under));
    for (const [item, on] of work.#on) this.#fit(item, this.#space.and(on, under));
  }

  #fit(item: Item, under: VariantSet): void {
    const there = this.#space.and(under, presenceOf(item, this.#space));
    this.#on.set(item, this.#space.or(this.#on.get(item) ?? this.#space.none, there));
  }

  #withdraw(item: Item, under: VariantSet): void {
    const { none } = this.#space;
    this.#on.set(item, this.#space.minus(this.#on.get(item) ?? none, under));
    this.#off.set(item, this.#space.or(this.#off.get(item) ?? none, under));
  }
}

export const isLiftingAid = (item: Item): boolean =>
  (item.kind === 'aid' || item.kind === 'tool') && item.lifts;

/** The machines that have an item. */
export const presenceOf = ({ when }: Item, space: Space): VariantSet =>
  when === undefined ? space.all : resolveCondition(space, when).value;

/** What performed work puts on and takes off, each procedure and section read once. */
const movesOf: (manual: LinkedManual) => Moves = onceFor((manual) => new Moves(manual));

class Moves {
  readonly #manual: LinkedManual;
  readonly #done = new Map<string, AidsOn>();
  readonly #open = new Set<string>();

  constructor(manual: LinkedManual) {
    this.#manual = manual;
  }

  /** Undefined for what the manual does not have, and where a procedure that performs itself comes round. */
  of({ procedure, part }: Perform): AidsOn | undefined {
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return undefined;
    if (part === undefined) return this.#through(target, target.procedure.sections, procedure.id);
    const section = target.section(part);
    if (section === undefined) return undefined;
    return this.#through(target, sectionsFrom(target, section), `${procedure.id}#${part.id}`);
  }

  #through(one: LinkedProcedure, sections: readonly Section[], key: string): AidsOn | undefined {
    const before = this.#done.get(key);
    if (before !== undefined || this.#open.has(key)) return before;
    this.#open.add(key);
    const { space } = this.#manual.manual;
    const moved = new AidsOn(this.#manual);
    for (const op of programOf(one, sections, space, space.all)) moved.follow(op, one);
    this.#open.delete(key);
    this.#done.set(key, moved);
    return moved;
  }
}

import { resolveCondition, type Space, type VariantSet } from '../applicability/index.ts';
import type { Item } from '../catalogue/index.ts';
import { programOf } from '../ledger/index.ts';
import { allSteps, type LinkedManual, type LinkedProcedure, sectionsFrom } from '../link/index.ts';
import type { Perform, Ref, Section } from '../syntax/index.ts';
import { fetchedItems } from './fetched-items.ts';
import { machinesOf } from './gather.ts';
import { PullNeeds } from './pull-needs.ts';

/**
 * Reads what procedures need, those that they perform included, each time they are performed. Every
 * procedure is read once, so the cost grows with the manual. A procedure that performs itself is cut where
 * it comes round.
 */
export class PullReader {
  readonly #manual: LinkedManual;
  readonly #space: Space;
  readonly #done = new Map<string, PullNeeds>();
  readonly #open = new Set<string>();
  readonly #presence = new Map<Item, VariantSet>();

  constructor(manual: LinkedManual) {
    this.#manual = manual;
    this.#space = manual.manual.space;
  }

  of(one: LinkedProcedure): PullNeeds {
    return this.#read(one, one.procedure.sections, one.procedure.id);
  }

  #read(one: LinkedProcedure, sections: readonly Section[], key: string): PullNeeds {
    const before = this.#done.get(key);
    if (before !== undefined) return before;
    const needs = new PullNeeds(this.#space);
    if (this.#open.has(one.procedure.id)) return needs;
    this.#open.add(one.procedure.id);
    this.#fill(needs, one, sections);
    this.#open.delete(one.procedure.id);
    this.#done.set(key, needs);
    return needs;
  }

  #fill(needs: PullNeeds, one: LinkedProcedure, sections: readonly Section[]): void {
    const { procedure } = one;
    const handOut = (items: readonly Item[], under: VariantSet): void => {
      for (const item of items)
        if (isHandedOut(item))
          needs.handOut(item, one, this.#space.and(under, this.#presenceOf(item)));
    };
    const named = (refs: readonly (Ref | string)[]): readonly Item[] =>
      refs.flatMap((ref) => one.item(ref) ?? []);
    const { tools, consumables } = procedure.front;
    handOut(named([...tools, ...consumables]), machinesOf(one, this.#manual));
    const steps = new Map([...allSteps(procedure)].map((step) => [step.place, step]));
    // The program goes twice through what is repeated; how often the work does is not known, so it counts once.
    const counted = new Set<object>();
    for (const op of programOf(one, sections, this.#space, this.#space.all)) {
      if (op.type === 'step') {
        const step = steps.get(op.place);
        if (step !== undefined) handOut(named([...step.tools, ...step.consumables]), op.under);
      } else if (op.type === 'act') {
        if (counted.has(op.action)) continue;
        counted.add(op.action);
        handOut(fetchedItems(op.action, one), op.under);
        const item = one.item(op.action.item);
        if (item === undefined) continue;
        needs.use(op.action, item, one, this.#space.and(op.under, this.#presenceOf(item)));
      } else if (op.type === 'perform') {
        if (counted.has(op.perform)) continue;
        counted.add(op.perform);
        const performed = this.#performed(op.perform);
        if (performed !== undefined) needs.perform(performed, op.under);
      }
    }
  }

  #performed({ procedure, part }: Perform): PullNeeds | undefined {
    const target = this.#manual.procedures.get(procedure.id);
    if (target === undefined) return undefined;
    if (part === undefined) return this.of(target);
    const section = target.section(part);
    if (section === undefined) return undefined;
    return this.#read(target, sectionsFrom(target, section), `${procedure.id}#${part.id}`);
  }

  /** The variants that have an item, each item's condition resolved once. */
  #presenceOf(item: Item): VariantSet {
    const known = this.#presence.get(item);
    if (known !== undefined) return known;
    const set =
      item.when === undefined ? this.#space.all : resolveCondition(this.#space, item.when).value;
    this.#presence.set(item, set);
    return set;
  }
}

function isHandedOut({ kind }: Item): boolean {
  return kind === 'tool' || kind === 'aid' || kind === 'consumable' || kind === 'circuit';
}

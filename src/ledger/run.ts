import type { Space, VariantSet } from '../applicability/index.ts';
import type { Item } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Account, Accounts } from './account.ts';
import type { Books } from './books.ts';
import type { LedgerFact } from './facts.ts';
import { Journal } from './journal.ts';
import type { Precedence } from './precedence.ts';
import type { Op, PerformOp } from './program.ts';
import { whenOf } from './when-of.ts';

/** What a run needs of the manual. */
export interface Setting {
  readonly space: Space;
  readonly accounts: Accounts;
  readonly precedence: (linked: LinkedProcedure) => Precedence;
  /** The variants that have an item. */
  readonly presence: (item: Item) => VariantSet;
  /** Brings another procedure into a run, at the operation that asks for it. */
  readonly perform: (run: Run, op: PerformOp) => void;
}

/** One pass over the operations of a procedure, on books of its own or of a caller, and what is told of it. */
export class Run {
  readonly setting: Setting;
  readonly linked: LinkedProcedure;
  /** The variants that the procedure is for. */
  readonly scope: VariantSet;
  readonly books: Books;
  readonly journal: Journal;
  readonly precedence: Precedence;
  readonly facts: LedgerFact[] = [];
  readonly #sets = new WeakMap<LedgerFact, VariantSet>();
  #doubtful: VariantSet;

  constructor(
    setting: Setting,
    linked: LinkedProcedure,
    scope: VariantSet,
    books: Books,
    journal: Journal = new Journal(setting.space),
  ) {
    this.setting = setting;
    this.linked = linked;
    this.scope = scope;
    this.books = books;
    this.journal = journal;
    this.precedence = setting.precedence(linked);
    this.#doubtful = setting.space.none;
  }

  /** The variants in which something unknown has been done by now: nothing sure can be said of them. */
  get doubtful(): VariantSet {
    return this.#doubtful;
  }

  /** From now on nothing more is told of how things stand in some variants. */
  doubt(under: VariantSet): void {
    this.#doubtful = this.setting.space.or(this.#doubtful, under);
  }

  /** The variants in words; undefined where it is all that the procedure is for. */
  when(set: VariantSet): string | undefined {
    return whenOf(this.setting.space, set, this.scope);
  }

  tell(fact: LedgerFact, set: VariantSet): void {
    const sure = this.#sureOf(fact, set);
    if (sure === this.setting.space.none) return;
    const told = sure === set ? fact : { ...fact, when: this.when(sure) };
    this.facts.push(told);
    this.keep(told, sure);
  }

  /** Tells of an item, or of one instance of it, at an operation. */
  tellAt({ place }: Op, { id: item, instance }: Subject, set: VariantSet, fact: Untold): void {
    const sure = this.#sureOf(fact, set);
    const procedure = this.linked.procedure.id;
    // Words for a set of variants are the dear part: only for what is told.
    if (sure !== this.setting.space.none)
      this.tell({ procedure, place, item, instance, when: this.when(sure), ...fact }, sure);
  }

  /** The variants of some for which a fact may be told. */
  #sureOf(fact: Pick<LedgerFact, 'kind'>, set: VariantSet): VariantSet {
    return isOfText(fact) ? set : this.setting.space.minus(set, this.#doubtful);
  }

  /** Remembers the variants that a fact holds for. */
  keep(fact: LedgerFact, set: VariantSet): void {
    this.#sets.set(fact, set);
  }

  /** The variants that a fact of this run holds for. */
  setOf(fact: LedgerFact): VariantSet {
    return this.#sets.get(fact) ?? this.scope;
  }
}

/** What a fact is about: an item, or one instance of it. */
export interface Subject {
  readonly id: string;
  readonly instance?: string | undefined;
}

export const subjectOf = ({ item, instance }: Account): Subject => ({ id: item.id, instance });

/** A fact without what all facts have in common. */
export type Untold = Own<LedgerFact>;

type Own<F> = F extends LedgerFact
  ? Omit<F, 'procedure' | 'place' | 'item' | 'instance' | 'when' | 'inside'>
  : never;

/** True for what holds wherever the items stand. */
const isOfText = ({ kind }: Pick<LedgerFact, 'kind'>): boolean =>
  kind === 'verb-unfit' || kind === 'item-absent';

import type { Verb } from '../../schemas/directives.ts';
import type { Space, VariantSet } from '../applicability/index.ts';
import type { Account } from './account.ts';
import type { Trace } from './facts.ts';
import type { Op } from './program.ts';

/** A move that took place. */
export interface Entry {
  readonly account: Account;
  readonly verb: Verb | 'perform';
  readonly under: VariantSet;
  /** The operation that did it. */
  readonly op: Op;
  readonly moved: number;
  readonly to: string;
  /** Of a performed procedure: what in it did this. */
  readonly inside?: Trace | undefined;
  /** Counts the entries of a journal. */
  readonly order: number;
}

/** Everything that moved in one run, by account, in order: the story that findings tell. */
export class Journal {
  readonly #space: Space;
  readonly #byAccount = new Map<Account, Entry[]>();
  readonly #told = new Map<Account, Map<string, VariantSet>>();
  readonly #roundTrips = new Map<Account, VariantSet>();
  readonly #steps: { readonly order: number; readonly under: VariantSet }[] = [];
  #length = 0;

  constructor(space: Space) {
    this.#space = space;
  }

  add(move: Omit<Entry, 'order'>): void {
    this.#length += 1;
    const entry = { ...move, order: this.#length };
    const list = this.#byAccount.get(entry.account);
    if (list === undefined) this.#byAccount.set(entry.account, [entry]);
    else list.push(entry);
    const told = this.#told.get(entry.account);
    for (const [key, set] of told ?? []) told?.set(key, this.#space.minus(set, entry.under));
  }

  /**
   * Of some variants those for which `key` has not been told of an account since it last moved; from now on
   * it has been told for all of them.
   */
  untold(account: Account, key: string, under: VariantSet): VariantSet {
    const told = this.#told.get(account) ?? new Map<string, VariantSet>();
    this.#told.set(account, told);
    const before = told.get(key) ?? this.#space.none;
    told.set(key, this.#space.or(before, under));
    return this.#space.minus(under, before);
  }

  /** A step begins for some variants. */
  step(under: VariantSet): void {
    this.#steps.push({ order: this.#length, under });
  }

  /** The variants for which more than one step begins between two moves. */
  beyondNextStep(from: Entry, to: Entry): VariantSet {
    let once = this.#space.none;
    let twice = this.#space.none;
    for (const { order, under } of this.#steps) {
      if (order < from.order || order >= to.order) continue;
      twice = this.#space.or(twice, this.#space.and(once, under));
      once = this.#space.or(once, under);
    }
    return twice;
  }

  /** Performed work has moved an account and brought it back: no part of its story, but it has been worked on. */
  addRoundTrip(account: Account, under: VariantSet): void {
    const before = this.#roundTrips.get(account) ?? this.#space.none;
    this.#roundTrips.set(account, this.#space.or(before, under));
  }

  /** All that has moved, if only to come back. */
  accounts(): Iterable<Account> {
    return new Set([...this.#byAccount.keys(), ...this.#roundTrips.keys()]);
  }

  /** The variants of `under` in which an account has moved, if only to come back. */
  touched(account: Account, under: VariantSet): VariantSet {
    const back = this.#space.and(this.#roundTrips.get(account) ?? this.#space.none, under);
    return this.entries(account, under).reduce(
      (set, entry) => this.#space.or(set, entry.under),
      back,
    );
  }

  /** Entries of an account that touch some variants of `under`. */
  entries(account: Account, under: VariantSet): readonly Entry[] {
    const list = this.#byAccount.get(account) ?? [];
    return list.filter((entry) => this.#space.and(entry.under, under) !== this.#space.none);
  }

  /** What last moved pieces of an account in some variants of `under`. */
  last(account: Account, under: VariantSet): Trace | undefined {
    const entry = this.entries(account, under).at(-1);
    return entry === undefined ? undefined : traceOf(entry);
  }

  /** How often an account has moved so far. */
  length(account: Account): number {
    return this.#byAccount.get(account)?.length ?? 0;
  }
}

export function traceOf({ op, verb, moved, inside }: Entry): Trace {
  return { place: op.place, verb, count: moved, ...(inside !== undefined && { inside }) };
}

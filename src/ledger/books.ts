import { PartitionMap, type Space, type VariantSet } from '../applicability/index.ts';
import { type Account, atHome, type Counts } from './account.ts';

/** Counts that hold for some variants. */
export interface Standing {
  readonly set: VariantSet;
  readonly value: Counts;
}

export type Test = (counts: Counts) => boolean;

/** The running balance of every account: for each, a map from sets of variants to counts. */
export class Books {
  readonly #space: Space;
  readonly #initial: (account: Account) => Counts;
  readonly #cells = new Map<Account, PartitionMap<Counts>>();
  /** The one object for each counts, so that equal ones are the same. */
  readonly #known = new Map<string, Counts>();
  readonly #touched = new Set<Account>();
  readonly #asked = new Map<Account, Set<Test>>();

  constructor(space: Space, initial: (account: Account) => Counts = atHome) {
    this.#space = space;
    this.#initial = initial;
  }

  /** Accounts whose counts were looked at as such, or changed. */
  touched(): readonly Account[] {
    return [...this.#touched];
  }

  /** Accounts of which no more was asked than what must not be, with all that was asked. */
  asked(): ReadonlyMap<Account, ReadonlySet<Test>> {
    return this.#asked;
  }

  at(account: Account, under: VariantSet): readonly Standing[] {
    this.#touched.add(account);
    return this.#cell(account).at(under);
  }

  /** Where something must not be, and is. Tests are told apart by identity. */
  broken(account: Account, under: VariantSet, test: Test): readonly Standing[] {
    const tests = this.#asked.get(account);
    if (tests === undefined) this.#asked.set(account, new Set([test]));
    else tests.add(test);
    return this.#cell(account)
      .at(under)
      .filter(({ value }) => test(value));
  }

  /** The variants of `under` whose counts pass the test, by the counts. */
  where(account: Account, under: VariantSet, test: Test): readonly Standing[] {
    return this.at(account, under).filter(({ value }) => test(value));
  }

  change(
    account: Account,
    under: VariantSet,
    next: (counts: Counts, set: VariantSet) => Counts,
  ): void {
    this.#touched.add(account);
    const cell = this.#cell(account).map(under, (counts, set) => this.#one(next(counts, set)));
    this.#cells.set(account, cell);
  }

  #cell(account: Account): PartitionMap<Counts> {
    let cell = this.#cells.get(account);
    if (cell === undefined) {
      cell = PartitionMap.constant(this.#space, this.#one(this.#initial(account)));
      this.#cells.set(account, cell);
    }
    return cell;
  }

  #one(counts: Counts): Counts {
    const key = counts.join();
    const known = this.#known.get(key);
    if (known === undefined) this.#known.set(key, counts);
    return known ?? counts;
  }
}

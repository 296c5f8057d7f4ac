import { PartitionMap, type Space, type VariantSet } from '../applicability/index.ts';
import { type Account, atHome, type Counts } from './account.ts';

/** Counts that hold for some variants. */
export interface Standing {
  readonly set: VariantSet;
  readonly value: Counts;
}

/** The running balance of every account: for each, a map from sets of variants to counts. */
export class Books {
  readonly #space: Space;
  readonly #initial: (account: Account) => Counts;
  readonly #cells = new Map<Account, PartitionMap<Counts>>();

  constructor(space: Space, initial: (account: Account) => Counts = atHome) {
    this.#space = space;
    this.#initial = initial;
  }

  /** Accounts that have been looked at or changed. */
  touched(): readonly Account[] {
    return [...this.#cells.keys()];
  }

  at(account: Account, under: VariantSet): readonly Standing[] {
    return this.#cell(account).at(under);
  }

  /** The variants of `under` whose counts pass the test, by the counts. */
  where(
    account: Account,
    under: VariantSet,
    test: (counts: Counts) => boolean,
  ): readonly Standing[] {
    return this.at(account, under).filter(({ value }) => test(value));
  }

  change(
    account: Account,
    under: VariantSet,
    next: (counts: Counts, set: VariantSet) => Counts,
  ): void {
    this.#cells.set(account, this.#cell(account).map(under, next));
  }

  #cell(account: Account): PartitionMap<Counts> {
    let cell = this.#cells.get(account);
    if (cell === undefined) {
      cell = PartitionMap.constant(this.#space, this.#initial(account), (counts) => counts.join());
      this.#cells.set(account, cell);
    }
    return cell;
  }
}

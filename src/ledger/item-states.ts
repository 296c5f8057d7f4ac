import type { StatefulItem } from '../catalogue/index.ts';
import { type Account, atHome, sameCounts, spread } from './account.ts';
import type { Contract } from './contract.ts';
import type { Run } from './run.ts';

/** Where the pieces of an item, or of one instance of it, stand where a run has come to. */
export interface ItemState {
  readonly item: StatefulItem;
  readonly instance: string | undefined;
  /** How many pieces there are. */
  readonly size: number;
  /** One for all variants that have the item, or one for each group of them that differs. */
  readonly standing: readonly StateFor[];
}

export interface StateFor {
  /** Only states that hold pieces: `[["out", 4], ["tight", 4]]`. */
  readonly spread: readonly (readonly [state: string, count: number])[];
  readonly isHome: boolean;
  /** The variants in words; undefined for all that the procedure is for. */
  readonly when: string | undefined;
}

/** The states of one item, one for each of its instances. */
export function statesOfItem(run: Run, item: StatefulItem): readonly ItemState[] {
  return run.setting.accounts.of(item).map((account) => stateOf(run, account));
}

/** All items that are not home in some variants, in the order in which they first moved. */
export function awayIn(run: Run, contract: Contract): readonly ItemState[] {
  const accounts = new Set([...contract.named, ...run.journal.accounts()]);
  return [...accounts]
    .filter(({ aspect }) => aspect === 'state')
    .map((account) => stateOf(run, account))
    .filter(({ standing }) => standing.some(({ isHome }) => !isHome));
}

function stateOf(run: Run, account: Account): ItemState {
  const { space, presence } = run.setting;
  const { item, instance, size } = account;
  const there = space.and(run.scope, presence(item));
  const home = atHome(account);
  const standing = run.books.at(account, there).map(({ set, value }) => ({
    spread: spread(account, value),
    isHome: sameCounts(value, home),
    when: run.when(set),
  }));
  return { item, instance, size, standing };
}

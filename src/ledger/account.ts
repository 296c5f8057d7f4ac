import type { StatefulItem } from '../catalogue/index.ts';
import { itemStates, pressureStates } from './kinds.ts';

/** What the ledger keeps one running balance for: an item, one instance of it, or the pressure of a circuit. */
export interface Account {
  readonly item: StatefulItem;
  readonly instance: string | undefined;
  readonly aspect: 'state' | 'pressure';
  /** Home state first. */
  readonly states: readonly string[];
  /** How many pieces it counts. */
  readonly size: number;
}

/** Pieces in each state, in the order of the account's states. */
export type Counts = readonly number[];

/** Accounts by item, each made once, so that they compare by identity. */
export class Accounts {
  readonly #states = new Map<StatefulItem, readonly Account[]>();
  readonly #pressures = new Map<StatefulItem, Account>();

  /** One account, or one for each instance where the entry has `each`. */
  of(item: StatefulItem, instances: readonly string[] = []): readonly Account[] {
    let all = this.#states.get(item);
    if (all === undefined) {
      const names = item.each ?? [undefined];
      all = names.map((instance) => ({
        item,
        instance,
        aspect: 'state',
        states: itemStates(item),
        size: 'count' in item ? item.count : 1,
      }));
      this.#states.set(item, all);
    }
    if (instances.length === 0) return all;
    return all.filter((one) => one.instance !== undefined && instances.includes(one.instance));
  }

  pressureOf(item: StatefulItem): Account {
    let account = this.#pressures.get(item);
    if (account === undefined) {
      account = {
        item,
        instance: undefined,
        aspect: 'pressure',
        states: pressureStates,
        size: 1,
      };
      this.#pressures.set(item, account);
    }
    return account;
  }
}

/** All pieces at home. */
export function atHome(account: Account): Counts {
  return account.states.map((_, i) => (i === 0 ? account.size : 0));
}

/** All pieces in one state, or spread as a map of counts says; undefined where that cannot be. */
export function countsOf(
  account: Account,
  state: string | Record<string, number>,
): Counts | undefined {
  if (typeof state === 'string') {
    if (!account.states.includes(state)) return undefined;
    return account.states.map((one) => (one === state ? account.size : 0));
  }
  if (Object.keys(state).some((name) => !account.states.includes(name))) return undefined;
  const counts = account.states.map((one) => state[one] ?? 0);
  return counts.reduce((sum, n) => sum + n, 0) === account.size ? counts : undefined;
}

/** Pieces in any of the named states. */
export function tally(account: Account, counts: Counts, states: readonly string[]): number {
  return states.reduce((sum, state) => sum + (counts[account.states.indexOf(state)] ?? 0), 0);
}

/** The states that hold pieces, with how many: `[["out", 4], ["tight", 4]]`. */
export function spread(
  account: Account,
  counts: Counts,
): (readonly [state: string, count: number])[] {
  return account.states.flatMap((state, i) => {
    const count = counts[i] ?? 0;
    return count > 0 ? [[state, count] as const] : [];
  });
}

export const sameCounts = (a: Counts, b: Counts): boolean =>
  a === b || (a.length === b.length && a.every((n, i) => n === b[i]));

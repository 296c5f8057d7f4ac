import type { StatefulItem } from '../catalogue/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import { type Account, type Accounts, atHome, type Counts, countsOf } from './account.ts';
import type { LedgerFact } from './facts.ts';
import { isStateful } from './precedence.ts';

/** What a procedure says of the machine before and after it; undefined where it says nothing, which means home. */
export interface Contract {
  starts(account: Account): Counts | undefined;
  leaves(account: Account): Counts | undefined;
  /** What `starts` says of an item, whichever of its accounts is asked for. */
  startOfItem(item: StatefulItem): Counts | undefined;
  /** Accounts that either side names. */
  readonly named: ReadonlySet<Account>;
  readonly facts: readonly LedgerFact[];
}

export function contractOf(linked: LinkedProcedure, accounts: Accounts): Contract {
  const facts: LedgerFact[] = [];
  const starts = side(linked, accounts, 'starts', facts);
  const leaves = side(linked, accounts, 'leaves', facts);
  return {
    starts: (account) => starts.get(account),
    leaves: (account) => leaves.get(account),
    startOfItem: (item) =>
      accounts
        .of(item)
        .map((account) => starts.get(account))
        .find((counts) => counts !== undefined),
    named: new Set([...starts.keys(), ...leaves.keys()]),
    facts,
  };
}

/** State that a procedure was written for. A circuit that is not full at the start is not under pressure either. */
export function startOf(contract: Contract, account: Account): Counts {
  if (account.aspect === 'pressure') {
    const state = contract.startOfItem(account.item);
    if (state !== undefined && state[0] === 0) return [0, 1];
  }
  return contract.starts(account) ?? atHome(account);
}

/** Where an account must stand at the end. */
export function expectedAtEnd(contract: Contract, account: Account): Counts {
  return contract.leaves(account) ?? atHome(account);
}

function side(
  linked: LinkedProcedure,
  accounts: Accounts,
  member: 'starts' | 'leaves',
  facts: LedgerFact[],
): ReadonlyMap<Account, Counts> {
  const { procedure } = linked;
  const states = new Map<Account, Counts>();
  for (const [id, state] of Object.entries(procedure.front[member])) {
    const item = linked.item(id);
    if (item?.kind === 'circuit' && state === 'relieved') {
      states.set(accounts.pressureOf(item), [0, 1]);
      continue;
    }
    const known = item !== undefined && isStateful(item) ? accounts.of(item) : [];
    for (const account of known) {
      const counts = countsOf(account, state);
      if (counts !== undefined) states.set(account, counts);
    }
    if (known.some((account) => !states.has(account)) || known.length === 0) {
      facts.push({
        kind: 'contract-unfit',
        procedure: procedure.id,
        place: procedure.placeOf(`${member}.${id}`),
        item: id,
        when: undefined,
        member,
        written: typeof state === 'string' ? state : JSON.stringify(state),
        known: known[0]?.states ?? [],
      });
    }
  }
  return states;
}

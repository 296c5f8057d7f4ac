import type { VariantSet } from '../applicability/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { Account } from './account.ts';
import type { Test } from './books.ts';
import type { Contract } from './contract.ts';
import type { LedgerFact, Trace } from './facts.ts';

/** What the rest of the manual needs of a procedure that has been analysed. */
export interface Summary {
  readonly linked: LinkedProcedure;
  readonly contract: Contract;
  /** Accounts that it looks at or changes. */
  readonly touched: readonly Account[];
  /** Accounts that must not be in its way, with the tests for that. */
  readonly asked: ReadonlyMap<Account, ReadonlySet<Test>>;
  readonly changed: readonly Account[];
  /** Circuits whose pressure is off in every way through it. */
  readonly relieved: readonly Account[];
  /** What last brought an account to where it is left. */
  readonly left: (account: Account) => Trace | undefined;
  /** The variants that it is for. */
  readonly scope: VariantSet;
  readonly facts: readonly LedgerFact[];
  /** The variants that one of its facts holds for. */
  readonly setOf: (fact: LedgerFact) => VariantSet;
}

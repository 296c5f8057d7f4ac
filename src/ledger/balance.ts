import { type Account, type Counts, sameCounts, spread } from './account.ts';
import { type Contract, expectedAtEnd } from './contract.ts';
import type { LedgerFact } from './facts.ts';
import { traceOf } from './journal.ts';
import type { Run } from './run.ts';

/** What is not where it should be at the end of a procedure, each with its story. */
export function balance(run: Run, contract: Contract): readonly LedgerFact[] {
  const accounts = new Set([...run.books.touched(), ...contract.named]);
  return [...accounts].flatMap((account) =>
    account.aspect === 'pressure' && contract.leaves(account) === undefined
      ? []
      : unbalanced(run, contract, account),
  );
}

/**
 * Leaves out what only follows from a thing that never comes back: it was closed over, what belongs to it
 * finds nothing there, and it is tightened while it is out. One finding says so.
 */
export function withoutConsequences(facts: readonly LedgerFact[]): readonly LedgerFact[] {
  const missing = new Set(facts.flatMap((fact) => (fact.kind === 'not-home' ? [fact.item] : [])));
  const follows = (fact: LedgerFact): boolean =>
    (fact.kind === 'closed-over' && missing.has(fact.over)) ||
    (fact.kind === 'nothing-there' && missing.has(fact.part)) ||
    (fact.kind === 'state-unfit' && isTightening(fact.verb) && missing.has(fact.item));
  return facts
    .filter((fact) => !follows(fact))
    .map((fact) => {
      if (fact.kind !== 'not-home') return fact;
      const over = facts.filter((one) => one.kind === 'closed-over' && one.over === fact.item);
      return over.length === 0 ? fact : { ...fact, closedOver: over.map((one) => one.place) };
    });
}

const isTightening = (verb: string): boolean => verb === 'torque' || verb === 'tighten';

function unbalanced(run: Run, contract: Contract, account: Account): readonly LedgerFact[] {
  const expected = expectedAtEnd(contract, account);
  const wrong = run.books.where(account, run.scope, (counts) => !sameCounts(counts, expected));
  return wrong.map(({ set, value }) => {
    const story = run.journal.entries(account, set);
    const { procedure } = run.linked;
    const declared = contract.leaves(account) !== undefined ? 'leaves' : 'starts';
    const { item } = account;
    const cause =
      story.findLast((entry) => isLackingSince(account, value, expected, entry.to)) ?? story.at(-1);
    return {
      kind: 'not-home',
      procedure: procedure.id,
      place: cause?.op.place ?? procedure.placeOf(`${declared}.${item.id}`),
      item: item.id,
      instance: account.instance,
      when: run.when(set),
      itemKind: item.kind,
      state: spread(account, value),
      expected: spread(account, expected),
      promised: contract.leaves(account) !== undefined,
      size: account.size,
      hasTorque: 'torque' in item && item.torque !== undefined,
      story: story.map(traceOf),
      closedOver: [],
    };
  });
}

/** True for a move into a state that holds more pieces at the end than it should. */
function isLackingSince(account: Account, counts: Counts, expected: Counts, to: string): boolean {
  const i = account.states.indexOf(to);
  return (counts[i] ?? 0) > (expected[i] ?? 0);
}

import type { Space, VariantSet } from '../applicability/index.ts';
import { type Account, type Counts, sameCounts, spread } from './account.ts';
import type { Standing } from './books.ts';
import { type Contract, expectedAtEnd } from './contract.ts';
import type { LedgerFact } from './facts.ts';
import { type Entry, traceOf } from './journal.ts';
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
export function withoutConsequences(run: Run, facts: readonly LedgerFact[]): readonly LedgerFact[] {
  const { space } = run.setting;
  const missing = new Map<string, VariantSet>();
  for (const fact of facts) {
    if (fact.kind !== 'not-home') continue;
    missing.set(fact.item, space.or(missing.get(fact.item) ?? space.none, run.setOf(fact)));
  }
  return facts.flatMap((fact): readonly LedgerFact[] => {
    if (fact.kind === 'not-home') {
      const over = facts.filter(
        (one) =>
          one.kind === 'closed-over' &&
          one.over === fact.item &&
          space.and(run.setOf(one), run.setOf(fact)) !== space.none,
      );
      return [over.length === 0 ? fact : { ...fact, closedOver: over.map((one) => one.place) }];
    }
    const lost = missing.get(causeOf(fact) ?? '');
    if (lost === undefined) return [fact];
    const rest = space.minus(run.setOf(fact), lost);
    if (rest === run.setOf(fact)) return [fact];
    return rest === space.none ? [] : [{ ...fact, when: run.when(rest) }];
  });
}

/** The item that a fact follows from, if that never comes back. */
function causeOf(fact: LedgerFact): string | undefined {
  switch (fact.kind) {
    case 'closed-over':
      return fact.over;
    case 'nothing-there':
      return fact.part;
    case 'state-unfit':
      return isTightening(fact.verb) ? fact.item : undefined;
    default:
      return undefined;
  }
}

const isTightening = (verb: string): boolean => verb === 'torque' || verb === 'tighten';

function unbalanced(run: Run, contract: Contract, account: Account): readonly LedgerFact[] {
  const expected = expectedAtEnd(contract, account);
  const { space, presence } = run.setting;
  const there = space.minus(space.and(run.scope, presence(account.item)), run.doubtful);
  const wrong = run.books.where(account, there, (counts) => !sameCounts(counts, expected));
  const causeIn = (set: VariantSet, value: Counts): Entry | undefined => {
    const story = run.journal.entries(account, set);
    return (
      story.findLast((entry) => isLackingSince(account, value, expected, entry.to)) ?? story.at(-1)
    );
  };
  const apart = wrong.flatMap((one) => apartByPerform(one, causeIn, space));
  return apart.map(({ set, value, cause }): LedgerFact => {
    const story = run.journal.entries(account, set);
    const { procedure } = run.linked;
    const declared = contract.leaves(account) !== undefined ? 'leaves' : 'starts';
    const { item } = account;
    const place = cause?.op.via ?? cause?.op.place ?? procedure.placeOf(`${declared}.${item.id}`);
    const fact: LedgerFact = {
      kind: 'not-home',
      procedure: procedure.id,
      place,
      ...(cause?.op.via !== undefined && { origin: cause.op.place }),
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
    run.keep(fact, set);
    return fact;
  });
}

/** What a performed text has done, apart from what the procedure does itself; each with the move that did it. */
function apartByPerform(
  { set, value }: Standing,
  causeIn: (set: VariantSet, value: Counts) => Entry | undefined,
  space: Space,
): readonly (Standing & { readonly cause: Entry | undefined })[] {
  const cause = causeIn(set, value);
  if (cause?.op.via === undefined) return [{ set, value, cause }];
  const others = space.minus(set, cause.under);
  const here = { set: space.and(set, cause.under), value, cause };
  return others === space.none
    ? [here]
    : [here, ...apartByPerform({ set: others, value }, causeIn, space)];
}

/** True for a move into a state that holds more pieces at the end than it should. */
function isLackingSince(account: Account, counts: Counts, expected: Counts, to: string): boolean {
  const i = account.states.indexOf(to);
  return (counts[i] ?? 0) > (expected[i] ?? 0);
}

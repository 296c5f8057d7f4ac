import type { Space, VariantSet } from '../applicability/index.ts';
import type { LedgerFact, PerformedBy } from './facts.ts';
import type { Summary } from './summary.ts';
import { whenOf } from './when-of.ts';

/** That a fact, told of a text by itself, holds for a procedure that performs the text as well. */
export interface Performing {
  /** Of the fact, as `factKey` gives it. */
  readonly key: string;
  readonly by: PerformedBy;
}

/** The facts of a procedure that are to be told in it, and those that are told of what it performs. */
export interface Folded {
  readonly facts: readonly LedgerFact[];
  readonly performing: readonly Performing[];
}

/**
 * What is told of a text anyway is not told again of a procedure that performs it. `told` gives the summary of the
 * procedure whose file it is.
 */
export function foldPerformed(
  { facts, setOf, scope }: Summary,
  told: (file: string) => Summary | undefined,
  space: Space,
): Folded {
  const own = new Map<string, ReadonlyMap<string, VariantSet>>();
  const ownOf = (file: string): ReadonlyMap<string, VariantSet> => {
    const known = own.get(file) ?? ownFacts(told(file));
    own.set(file, known);
    return known;
  };
  const performing: Performing[] = [];
  const rest = facts.flatMap((fact): readonly LedgerFact[] => {
    const { origin, procedure, place } = fact;
    if (origin === undefined) return [fact];
    const key = factKey({ ...fact, place: origin });
    const known = ownOf(origin.file).get(key);
    if (known === undefined) return [fact];
    const both = space.and(setOf(fact), known);
    if (both === space.none) return [fact];
    performing.push({ key, by: { procedure, place, when: whenOf(space, both, scope) } });
    const others = space.minus(setOf(fact), both);
    return others === space.none ? [] : [{ ...fact, when: whenOf(space, others, scope) }];
  });
  return { facts: rest, performing };
}

function ownFacts(summary: Summary | undefined): ReadonlyMap<string, VariantSet> {
  if (summary === undefined) return new Map();
  const own = summary.facts.filter(({ origin }) => origin === undefined);
  return new Map(own.map((fact) => [factKey(fact), summary.setOf(fact)]));
}

/** What makes two facts of the end of the work the same fault. */
export function factKey(fact: LedgerFact): string {
  const { kind, item, instance, place } = fact;
  const state = fact.kind === 'not-home' ? [fact.state, fact.expected] : [];
  return JSON.stringify([kind, item, instance, place.file, place.start.offset, state]);
}

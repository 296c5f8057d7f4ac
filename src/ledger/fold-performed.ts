import type { Space, VariantSet } from '../applicability/index.ts';
import type { LedgerFact, PerformedBy } from './facts.ts';
import type { Summary } from './summary.ts';
import { whenOf } from './when-of.ts';

interface Own {
  readonly set: VariantSet;
  readonly performedBy: PerformedBy[];
}

/**
 * The facts of all procedures. What is told of a text anyway is not told again of each procedure that performs it:
 * the one fact names them all.
 */
export function foldPerformed(summaries: readonly Summary[], space: Space): readonly LedgerFact[] {
  const own = new Map<string, Own>();
  for (const { facts, setOf } of summaries) {
    for (const fact of facts) {
      if (fact.origin !== undefined) continue;
      own.set(keyOf(fact), { set: setOf(fact), performedBy: [] });
    }
  }
  const rest = summaries.flatMap(({ facts, setOf, scope }) =>
    facts.flatMap((fact): readonly LedgerFact[] => {
      const { origin, procedure, place } = fact;
      const known = origin && own.get(keyOf({ ...fact, place: origin }));
      if (known === undefined) return [fact];
      const both = space.and(setOf(fact), known.set);
      if (both === space.none) return [fact];
      known.performedBy.push({ procedure, place, when: whenOf(space, both, scope) });
      const others = space.minus(setOf(fact), both);
      return others === space.none ? [] : [{ ...fact, when: whenOf(space, others, scope) }];
    }),
  );
  return rest.map((fact) => {
    const performedBy = fact.origin === undefined ? own.get(keyOf(fact))?.performedBy : undefined;
    return performedBy === undefined || performedBy.length === 0 ? fact : { ...fact, performedBy };
  });
}

/** What makes two facts of the end of the work the same fault. */
function keyOf(fact: LedgerFact): string {
  const { kind, item, instance, place } = fact;
  const state = fact.kind === 'not-home' ? [fact.state, fact.expected] : [];
  return JSON.stringify([kind, item, instance, place.file, place.start.offset, state]);
}

import type { LedgerFact } from '../../src/ledger/index.ts';
import type { LinkedManual } from '../../src/link/index.ts';
import { holdsFor, sayingsOf } from './told.ts';
import type { World } from './world.ts';

/**
 * What facts say of every machine, wherever they are told: for texts that say the same in other places, without
 * branches.
 */
export function saidOfEach(
  { machines }: World,
  manual: LinkedManual,
  facts: readonly LedgerFact[],
): readonly (readonly string[])[] {
  const sayings = facts.map((fact) => {
    const { inside: _, ...own } = fact;
    const place = { ...own.place, start: { ...own.place.start, offset: 0 } };
    return { fact, says: sayingsOf({ ...own, place }, manual) };
  });
  return machines.map((machine) => {
    const one = { machine, taken: new Set<string>() };
    const own = sayings.flatMap(({ fact, says }) => (holdsFor(fact, one) === false ? [] : says));
    return [...new Set(own)].toSorted();
  });
}

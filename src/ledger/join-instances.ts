import type { LinkedProcedure } from '../link/index.ts';
import type { LedgerFact } from './facts.ts';

/** Facts that differ only in the instance of an item are one, which names no instance where it is all of them. `keep` hears what becomes of what. */
export function joinInstances(
  facts: readonly LedgerFact[],
  linked: LinkedProcedure,
  keep: (joined: LedgerFact, from: LedgerFact) => void,
): readonly LedgerFact[] {
  const joined = new Map<string, { fact: LedgerFact; instances: string[] }>();
  for (const fact of facts) {
    const key = JSON.stringify({
      ...fact,
      instance: fact.instance !== undefined,
    });
    const known = joined.get(key);
    if (known === undefined) {
      joined.set(key, {
        fact,
        instances: fact.instance === undefined ? [] : [fact.instance],
      });
    } else if (fact.instance !== undefined && !known.instances.includes(fact.instance))
      known.instances.push(fact.instance);
  }
  return [...joined.values()].map(({ fact, instances }) => {
    if (instances.length === 0) return fact;
    const item = linked.item(fact.item);
    const all = item !== undefined && 'each' in item ? (item.each?.length ?? 0) : 0;
    const instance = instances.length === all ? undefined : instances.join(', ');
    const told = { ...fact, instance };
    keep(told, fact);
    return told;
  });
}

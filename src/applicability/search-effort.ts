import type { Diagrams } from './diagrams.ts';
import type { VariantSet } from './variant-set.ts';

/** Operations on sets after which a search for words ends. */
const most = 2_000;
/** The same times the nodes of what is to be told: an operation on a large diagram takes that much longer. */
const mostNodes = 200_000;

/** What a search may still do: false once so many operations more are too many. */
export interface Effort {
  spend(operations: number): boolean;
}

/**
 * The effort that one search for the words of some sets is worth. It is counted in operations, not in time nor in what
 * the caches leave to do: the same set always gets the same words.
 */
export function effortFor(
  diagrams: Diagrams,
  sets: readonly VariantSet[],
  nodesAllowed: number = mostNodes,
): Effort {
  const nodes = sets.reduce((sum, set) => sum + diagrams.nodesOf(set).size, 1);
  let left = Math.min(most, Math.floor(nodesAllowed / nodes));
  return {
    spend: (operations) => {
      left -= operations;
      return left >= 0;
    },
  };
}

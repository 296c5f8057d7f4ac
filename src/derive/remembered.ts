import type { LinkedProcedure } from '../link/index.ts';

/**
 * A function of one procedure alone that is worked out once for each. A linked procedure never changes: where
 * a later check hands out the same object, its text and its entries are the same.
 */
export function remembered<T extends object>(
  make: (one: LinkedProcedure) => T,
): (one: LinkedProcedure) => T {
  const known = new WeakMap<LinkedProcedure, T>();
  return (one) => {
    const before = known.get(one);
    if (before !== undefined) return before;
    const value = make(one);
    known.set(one, value);
    return value;
  };
}

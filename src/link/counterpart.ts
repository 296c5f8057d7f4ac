import type { States } from '../../schemas/front-matter.ts';
import type { Outline } from './outline.ts';

/**
 * The id of the one procedure that starts where another leaves off and brings that home, such as the filling after a
 * draining; whatever else it asks for at its start it must leave as it was.
 */
export function counterpartOf(one: Outline, withContracts: readonly Outline[]): string | undefined {
  const left = Object.entries(one.leaves).filter(([item, state]) => !same(state, one.starts[item]));
  if (left.length === 0) return undefined;
  const fitting = withContracts.filter(({ machine, starts, leaves }) => {
    const undoes = left.every(
      ([item, state]) => same(starts[item], state) && leaves[item] === undefined,
    );
    const others = Object.entries(starts).filter(([item]) => !left.some(([name]) => name === item));
    return (
      machine === one.machine &&
      undoes &&
      others.every(([item, state]) => same(state, leaves[item]))
    );
  });
  return fitting.length === 1 ? fitting[0]?.id : undefined;
}

type State = States[string] | undefined;

function same(a: State, b: State): boolean {
  if (a === undefined || b === undefined) return false;
  if (typeof a === 'string' || typeof b === 'string') return a === b;
  const ids = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...ids].every((id) => (a[id] ?? 0) === (b[id] ?? 0));
}

import type { States } from '../../schemas/front-matter.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';

/**
 * The one procedure that starts where another leaves off and brings that home, such as the filling after a
 * draining; whatever else it asks for at its start it must leave as it was.
 */
export function counterpartOf(
  manual: LinkedManual,
  one: LinkedProcedure,
): LinkedProcedure | undefined {
  const { starts, leaves, machine } = one.procedure.front;
  const left = Object.entries(leaves).filter(([item, state]) => !same(state, starts[item]));
  if (left.length === 0) return undefined;
  const fitting = [...manual.procedures.values()].filter(({ procedure: { front } }) => {
    const undoes = left.every(
      ([item, state]) => same(front.starts[item], state) && front.leaves[item] === undefined,
    );
    const others = Object.entries(front.starts).filter(
      ([item]) => !left.some(([id]) => id === item),
    );
    const isSameMachine = front.machine === machine;
    return (
      isSameMachine && undoes && others.every(([item, state]) => same(state, front.leaves[item]))
    );
  });
  return fitting.length === 1 ? fitting[0] : undefined;
}

type State = States[string] | undefined;

function same(a: State, b: State): boolean {
  if (a === undefined || b === undefined) return false;
  if (typeof a === 'string' || typeof b === 'string') return a === b;
  const ids = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...ids].every((id) => (a[id] ?? 0) === (b[id] ?? 0));
}

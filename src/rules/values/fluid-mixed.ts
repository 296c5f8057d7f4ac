import type { Circuit, Item } from '../../catalogue/index.ts';
import { allActions, type LinkedProcedure } from '../../link/index.ts';
import type { Action, Ref } from '../../syntax/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { sentence } from '../wording/lists.ts';
import { the, thing } from '../wording/thing.ts';

export const rule: Rule = {
  id: 'fluid-mixed',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const action of allActions(one.procedure)) {
        for (const { circuit, ref, other, placeOf } of mixedBy(action, one)) {
          yield {
            place: ref.place,
            procedure,
            item: circuit.id,
            message: `${sentence(the(thing(other.id, other)))} must not get into ${the(thing(circuit.id, circuit))}`,
            data: { into: circuit.id, from: other.id },
            related: [related(placeOf, 'the catalogue says so')],
            help: 'Name the fluid that belongs in it, or correct `never-with` in the catalogue.',
          };
        }
      }
    }
  },
};

interface Mixed {
  readonly circuit: Circuit;
  readonly ref: Ref;
  readonly other: Item;
  readonly placeOf: Item['place'];
}

/** What an action pours into a circuit, or tops it up with, that its catalogue entry forbids, or that forbids it. */
function mixedBy(action: Action, one: LinkedProcedure): Mixed[] {
  const circuit = one.item(action.item);
  if (circuit?.kind !== 'circuit' || action.verb !== 'fill') return [];
  return action.with.flatMap((ref): Mixed[] => {
    const other = one.item(ref);
    if (other === undefined) return [];
    const index = circuit['never-with'].indexOf(other.id);
    if (index >= 0)
      return [{ circuit, ref, other, placeOf: circuit.placeOf(`never-with.${index}`) }];
    const back = other.kind === 'circuit' ? other['never-with'].indexOf(circuit.id) : -1;
    return back >= 0 ? [{ circuit, ref, other, placeOf: other.placeOf(`never-with.${back}`) }] : [];
  });
}

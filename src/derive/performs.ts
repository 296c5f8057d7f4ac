import { allBlocks, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import { remembered } from './remembered.ts';

/** Which procedures each one performs directly, in order of reading, and by which it is performed, by id. */
export interface Performs {
  performs(one: LinkedProcedure): readonly LinkedProcedure[];
  performedBy(one: LinkedProcedure): readonly LinkedProcedure[];
}

export function performsOf(manual: LinkedManual): Performs {
  const down = new Map<LinkedProcedure, Set<LinkedProcedure>>();
  const up = new Map<LinkedProcedure, Set<LinkedProcedure>>();
  for (const one of manual.procedures.values()) {
    for (const id of performedIn(one)) {
      const target = manual.procedures.get(id);
      if (target === undefined) continue;
      down.set(one, (down.get(one) ?? new Set()).add(target));
      up.set(target, (up.get(target) ?? new Set()).add(one));
    }
  }
  return {
    performs: (one) => [...(down.get(one) ?? [])],
    performedBy: (one) => [...(up.get(one) ?? [])],
  };
}

const performedIn = remembered((one): readonly string[] =>
  [...allBlocks(one.procedure)].flatMap((block) =>
    block.type === 'perform' ? [block.procedure.id] : [],
  ),
);

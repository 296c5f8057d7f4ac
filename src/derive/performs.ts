import { allBlocks, type LinkedManual, type LinkedProcedure } from '../link/index.ts';

/** Which procedures each one performs directly, in order of reading, and by which it is performed, by id. */
export interface Performs {
  performs(one: LinkedProcedure): readonly LinkedProcedure[];
  performedBy(one: LinkedProcedure): readonly LinkedProcedure[];
}

export function performsOf(manual: LinkedManual): Performs {
  const down = new Map<LinkedProcedure, Set<LinkedProcedure>>();
  const up = new Map<LinkedProcedure, Set<LinkedProcedure>>();
  for (const one of manual.procedures.values()) {
    for (const block of allBlocks(one.procedure)) {
      if (block.type !== 'perform') continue;
      const target = manual.procedures.get(block.procedure.id);
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

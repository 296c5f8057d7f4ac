import { allBlocks, type LinkedManual, type LinkedProcedure } from '../link/index.ts';

/** What stands aside, or is away, before the words of a procedure are read. */
export interface Standing {
  readonly aside: Set<string>;
  readonly away: Set<string>;
  /** False where a part of another procedure is performed: nobody knows then what is away. */
  readonly isKnown: boolean;
}

/** From what the procedure starts with and what others leave that it performs. */
export function standingAtFirst(one: LinkedProcedure, manual: LinkedManual): Standing {
  const aside = new Set<string>();
  const away = new Set<string>();
  let isKnown = true;
  const add = (states: LinkedProcedure['procedure']['front']['starts']): void => {
    for (const [id, state] of Object.entries(states)) {
      away.add(id);
      if (state === 'aside') aside.add(id);
    }
  };
  add(one.procedure.front.starts);
  for (const block of allBlocks(one.procedure)) {
    if (block.type !== 'perform') continue;
    const performed = manual.procedures.get(block.procedure.id);
    if (performed === undefined || block.part !== undefined) isKnown = false;
    else add(performed.procedure.front.leaves);
  }
  return { aside, away, isKnown };
}

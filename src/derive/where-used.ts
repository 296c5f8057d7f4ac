import type { Verb } from '../../schemas/directives.ts';
import type { Item } from '../catalogue/index.ts';
import { allBlocks, allSteps, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import type { Ref } from '../syntax/index.ts';
import { actionsOf } from './gather.ts';

export interface Use {
  readonly one: LinkedProcedure;
  /** What is done with it there, in order of reading; empty where it is only listed or shown. */
  readonly verbs: readonly Verb[];
}

/** Where each entry is used in a procedure's own text, procedures in order of id. */
export function whereUsed(manual: LinkedManual): (item: Item) => readonly Use[] {
  const uses = new Map<Item, Map<LinkedProcedure, Set<Verb>>>();
  for (const one of manual.procedures.values()) {
    const note = (ref: Ref | string, verb?: Verb): void => {
      const item = one.item(ref);
      if (item === undefined) return;
      const inProcedures = uses.get(item) ?? new Map<LinkedProcedure, Set<Verb>>();
      const verbs = inProcedures.get(one) ?? new Set<Verb>();
      if (verb !== undefined) verbs.add(verb);
      uses.set(item, inProcedures.set(one, verbs));
    };
    noteAll(one, note);
  }
  return (item) => [...(uses.get(item) ?? [])].map(([one, verbs]) => ({ one, verbs: [...verbs] }));
}

function noteAll(one: LinkedProcedure, note: (ref: Ref | string, verb?: Verb) => void): void {
  const { front } = one.procedure;
  for (const id of [...front.tools, ...front.consumables]) note(id);
  for (const step of allSteps(one.procedure)) {
    for (const ref of [...step.tools, ...step.consumables]) note(ref);
  }
  for (const block of allBlocks(one.procedure)) {
    if (block.type === 'torque' || block.type === 'fluid') note(block.item);
    if (block.type === 'hazard' && block.of !== undefined) note(block.of);
    for (const action of actionsOf(block)) {
      note(action.item, action.verb);
      for (const ref of action.with) note(ref);
    }
  }
}

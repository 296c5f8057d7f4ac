import type { Verb } from '../../schemas/directives.ts';
import type { Item } from '../catalogue/index.ts';
import { allBlocks, allSteps, type LinkedManual, type LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import type { Ref } from '../syntax/index.ts';
import { actionsOf } from './gather.ts';
import { remembered } from './remembered.ts';

export interface Use {
  readonly one: LinkedProcedure;
  /** What is done with it there, in order of reading; empty where it is only listed or shown. */
  readonly verbs: readonly Verb[];
}

/**
 * Where each entry is used in a procedure's own text, procedures in order of id. Only those are read whose
 * catalogue has the entry, so that to ask of a few entries costs little in a manual of many machines.
 */
export function whereUsed(manual: LinkedManual): (item: Item) => readonly Use[] {
  const groups = [...Map.groupBy(manual.procedures.values(), ({ catalogue }) => catalogue)].map(
    ([{ items }, procedures]) => ({ items, procedures }),
  );
  const uses = new Map<ReadonlyMap<string, Item>, ReadonlyMap<Item, readonly Use[]>>();
  return (item) => {
    const found = groups
      .filter(({ items }) => items.get(item.id) === item)
      .map(({ items, procedures }) => {
        const known = uses.get(items) ?? usesByItem(procedures);
        uses.set(items, known);
        return known.get(item) ?? [];
      });
    return found.length < 2 ? found.flat() : found.flat().sort(byId);
  };
}

const byId = (a: Use, b: Use): number => compareText(a.one.procedure.id, b.one.procedure.id);

function usesByItem(procedures: readonly LinkedProcedure[]): ReadonlyMap<Item, readonly Use[]> {
  const uses = new Map<Item, Use[]>();
  for (const one of procedures) {
    for (const [item, use] of usesIn(one)) {
      const known = uses.get(item);
      if (known === undefined) uses.set(item, [use]);
      else known.push(use);
    }
  }
  return uses;
}

/** The entries that a procedure's own text uses. */
const usesIn = remembered((one): ReadonlyMap<Item, Use> => {
  const found = new Map<Item, Set<Verb>>();
  noteAll(one, (ref, verb) => {
    const item = one.item(ref);
    if (item === undefined) return;
    const verbs = found.get(item) ?? new Set<Verb>();
    if (verb !== undefined) verbs.add(verb);
    found.set(item, verbs);
  });
  return new Map([...found].map(([item, verbs]) => [item, { one, verbs: [...verbs] }]));
});

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

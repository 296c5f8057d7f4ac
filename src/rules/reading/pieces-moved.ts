import type { Item } from '../../catalogue/index.ts';
import { actionsIn, type LinkedManual, type LinkedProcedure, within } from '../../link/index.ts';
import type { Action } from '../../syntax/index.ts';

/**
 * Every number of pieces that an action may be about. With `qty` it says so itself. Without, it moves what is left:
 * all pieces, or all but those that actions before it took or that the contract names.
 */
export function piecesMoved(action: Action, item: Item, before: readonly number[]): Set<number> {
  const each = 'each' in item ? item.each : undefined;
  const instances = action.each.length > 0 ? action.each.length : (each?.length ?? 1);
  const one = action.qty?.count ?? ('count' in item ? item.count : 1);
  const moved = new Set([one, one * instances]);
  if (action.qty !== undefined) return moved;
  for (const taken of sums(before, one)) {
    for (const left of [taken, one - taken]) {
      if (left > 0) moved.add(left).add(left * instances);
    }
  }
  return moved;
}

/** All sums of some of the numbers, up to a most. */
function sums(numbers: readonly number[], most: number): Set<number> {
  const found = new Set([0]);
  for (const number of new Set(numbers)) {
    for (const sum of [...found]) if (sum + number <= most) found.add(sum + number);
  }
  return found;
}

/** The actions of a procedure, each with the numbers that were moved of its item before. */
export function* actionsWithHistory(
  one: LinkedProcedure,
  { procedures }: LinkedManual,
): Generator<{ readonly action: Action; readonly before: readonly number[] }> {
  const history = new Map<string, number[]>();
  const note = (id: string, count: number): void => {
    history.set(id, [...(history.get(id) ?? []), count]);
  };
  for (const [id, state] of Object.entries(one.procedure.front.starts)) {
    if (typeof state !== 'string') for (const count of Object.values(state)) note(id, count);
  }
  const performed = new Set<string>();
  const perform = (id: string): void => {
    const callee = procedures.get(id);
    if (callee === undefined || performed.has(id)) return;
    performed.add(id);
    for (const section of callee.procedure.sections) {
      for (const { item, qty } of actionsIn(section.blocks)) {
        if (qty !== undefined) note(item.id, qty.count);
      }
      for (const block of within(section.blocks)) {
        if (block.type === 'perform') perform(block.procedure.id);
      }
    }
  };
  for (const section of one.procedure.sections) {
    for (const block of within(section.blocks)) {
      if (block.type === 'perform') perform(block.procedure.id);
      if (block.type !== 'prose') continue;
      for (const action of block.actions) {
        yield { action, before: history.get(action.item.id) ?? [] };
        if (action.qty !== undefined) note(action.item.id, action.qty.count);
      }
    }
  }
}

import type { LinkedProcedure } from '../link/index.ts';
import type { Ref } from '../syntax/index.ts';
import type { Op } from './program.ts';

/**
 * An operation of a procedure that is performed `each=right`: what its text does at one instance (`each=left`) is
 * done at the other instead, where the item has it. All else stays as it is.
 */
export function aimedAt(op: Op, instance: Ref, linked: LinkedProcedure): Op {
  if (op.type === 'perform') {
    return op.perform.each === undefined
      ? { ...op, perform: { ...op.perform, each: instance } }
      : op;
  }
  if (op.type !== 'act' || op.action.each.length !== 1) return op;
  const item = linked.item(op.action.item);
  const has = item !== undefined && 'each' in item && item.each?.includes(instance.id);
  return has ? { ...op, action: { ...op.action, each: [instance] } } : op;
}

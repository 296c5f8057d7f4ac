import { type WrenchFault, type WrenchInUse, wrenchInUse } from '../joint/index.ts';
import { kindOf, parseQuantity } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';
import type { LinkedProcedure } from './linked.ts';

/**
 * The torque wrench of an action and the extension on it. Nothing where there is no extension, and nothing where a
 * length or the angle cannot be read, which is told elsewhere.
 */
export function wrenchOf(
  action: Action,
  one: LinkedProcedure,
): { readonly value?: WrenchInUse; readonly fault?: WrenchFault } {
  const tools = action.with.flatMap((ref) => {
    const item = action.verb === 'torque' ? one.item(ref) : undefined;
    return item?.kind === 'tool' ? [item] : [];
  });
  if (tools.some(({ faulty }) => faulty.has('length') || faulty.has('extension'))) return {};
  if (action.angle === undefined) return wrenchInUse(tools, undefined);
  const angle = parseQuantity(action.angle.text).value;
  return angle === undefined || kindOf(angle) !== 'angle' ? {} : wrenchInUse(tools, angle);
}

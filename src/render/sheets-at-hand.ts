import { allOf, anyOf, type MachineCondition } from '../applicability/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { SheetContext } from './sheet-context.ts';

/** A sheet that another one needs, with the machines on which it does; undefined is always. */
export interface SheetAtHand {
  readonly target: LinkedProcedure;
  readonly condition: MachineCondition | undefined;
}

/** The sheets that the technician turns to: of all performed jobs those that are not printed in place, in order of reading. */
export function sheetsAtHand(sheet: SheetContext): readonly SheetAtHand[] {
  const found = new Map<LinkedProcedure, (MachineCondition | undefined)[]>();
  collect(sheet, [], found);
  return [...found].map(([target, conditions]) => ({
    target,
    condition: allOf([anyOf(conditions), sheet.presence.when(target.procedure.when)]),
  }));
}

function collect(
  context: SheetContext,
  around: readonly (MachineCondition | undefined)[],
  found: Map<LinkedProcedure, (MachineCondition | undefined)[]>,
): void {
  for (const { perform, when } of context.presence.performs(context.sections)) {
    const target = context.manual.procedures.get(perform.procedure.id);
    if (target === undefined) continue;
    const job = context.numbers.job(perform);
    const here = [...around, when];
    if (job === undefined) found.set(target, [...(found.get(target) ?? []), allOf(here)]);
    else {
      const own = context.presence.when(target.procedure.when);
      collect(context.inside(job), [...here, own], found);
    }
  }
}

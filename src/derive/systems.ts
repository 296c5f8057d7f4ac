import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import { compareText } from '../source/index.ts';

export interface System {
  readonly name: string;
  readonly procedures: readonly LinkedProcedure[];
}

/** Heading for procedures that name no system. */
const unnamed = 'Other work';

/**
 * Procedures under their systems: in the order of manual.yaml, others by name, those without one last;
 * within a system by document number, then by id.
 */
export function systemsOf(manual: LinkedManual): readonly System[] {
  const bySystem = Map.groupBy(manual.procedures.values(), (one) => one.procedure.front.system);
  const first = manual.manual.settings.systems.filter((name) => bySystem.has(name));
  const others = [...bySystem.keys()]
    .filter((name) => name !== undefined)
    .filter((name) => !first.includes(name));
  const named = [...first, ...others.sort(compareText)];
  const order = bySystem.has(undefined) ? [...named, undefined] : named;
  return order.map((name) => ({
    name: name ?? (named.length === 0 ? 'Procedures' : unnamed),
    procedures: (bySystem.get(name) ?? []).sort(
      (a, b) =>
        compareText(a.procedure.front.document ?? '', b.procedure.front.document ?? '') ||
        compareText(a.procedure.id, b.procedure.id),
    ),
  }));
}

/**
 * The number by which a sheet is filed, such as `WM-410-012`: the manual's prefix and the procedure's
 * own number, or its id. Never its place in the contents, which another procedure could change.
 */
export function documentNumber(manual: LinkedManual, one: LinkedProcedure): string {
  const prefix = manual.manual.settings['document-prefix'];
  const own = one.procedure.front.document ?? one.procedure.id;
  return prefix === undefined ? own : `${prefix}-${own}`;
}

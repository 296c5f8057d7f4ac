import type { StatefulItem } from '../catalogue/index.ts';
import type { Requirement } from './requirements.ts';
import type { Run } from './run.ts';

/** What makes a broken requirement the same one: it is told once, until the account in the way moves. */
export function toldKey(
  run: Run,
  kind: Requirement['kind'],
  item: StatefulItem,
  instance: string | undefined,
): string {
  return [run.linked.procedure.id, kind, item.id, instance].join(' ');
}

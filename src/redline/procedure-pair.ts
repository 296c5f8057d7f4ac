import type { LinkedProcedure } from '../link/index.ts';
import type { ConditionComparer } from './conditions.ts';
import type { Names } from './names.ts';

/** Two texts of one procedure. */
export interface ProcedurePair {
  readonly before: LinkedProcedure;
  readonly after: LinkedProcedure;
  readonly names: Names;
  readonly conditions: ConditionComparer;
}

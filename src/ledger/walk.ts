import { act } from './act.ts';
import type { Op } from './program.ts';
import type { Run } from './run.ts';

/** Goes through operations in order, on the books of a run. */
export function walk(run: Run, program: readonly Op[]): void {
  const { setting, journal } = run;
  for (const op of program) {
    if (op.under === setting.space.none) continue;
    if (op.type === 'step') journal.step(op.under);
    else if (op.type === 'act') act(run, op);
    else if (op.type === 'perform') setting.perform(run, op);
    else run.doubt(op.under);
  }
}

import type { StatefulItem } from '../catalogue/index.ts';
import { awayIn, type Contract, type ItemState, type Run, statesOfItem } from '../ledger/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import type { Desk } from './desk.ts';

/** How the machine stands where the work of a procedure has come to an offset of its text. */
export interface StateHere {
  readonly one: LinkedProcedure;
  readonly linked: LinkedManual;
  readonly away: readonly ItemState[];
  readonly of: (item: StatefulItem) => readonly ItemState[];
}

/** Undefined where the file is no procedure that can be read. */
export function stateAt(desk: Desk, file: string, offset: number): StateHere | undefined {
  const { linked, ledger } = desk.forAsking;
  const one = procedureIn(desk, linked, file);
  if (one === undefined) return undefined;
  const { run, contract } = ledger.runBefore(one, offset);
  return { one, linked, ...states(run, contract) };
}

/** Of a file the procedure in it, as far as the manual has it. */
export function procedureIn(
  desk: Desk,
  { procedures }: LinkedManual,
  file: string,
): LinkedProcedure | undefined {
  const id = desk.written(file)?.id;
  const one = id === undefined ? undefined : procedures.get(id);
  return one?.procedure.file === file ? one : undefined;
}

function states(run: Run, contract: Contract): Pick<StateHere, 'away' | 'of'> {
  return { away: awayIn(run, contract), of: (item) => statesOfItem(run, item) };
}

import { documentNumber, placingOn, type StepNumbers, stepNumbers } from '../derive/index.ts';
import type { LinkedManual, LinkedProcedure } from '../link/index.ts';
import type { ManualContext } from './sheet-context.ts';

/** What all sheets of a manual have in common. `base` leads from a sheet's folder to the root: `../../`. */
export function manualContext(manual: LinkedManual, base: string): ManualContext {
  const numbers = new Map<LinkedProcedure, StepNumbers>();
  const byFile = new Map([...manual.procedures.values()].map((one) => [one.procedure.file, one]));
  return {
    manual,
    policy: manual.manual.policy,
    base,
    numbersOf: (one) => {
      const known = numbers.get(one) ?? stepNumbers(one.procedure, placingOn(manual, one));
      numbers.set(one, known);
      return known;
    },
    documentNumber: (one) => documentNumber(manual, one),
    procedureInFile: (path) => byFile.get(path),
  };
}

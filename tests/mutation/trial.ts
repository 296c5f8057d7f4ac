import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { CheckedManual } from './checked-manual.ts';
import { type Mutant, mutantsOf } from './mutants.ts';
import { operators } from './operators/index.ts';
import { type Reason, reasonFor } from './reasons.ts';

/** What became of one mutant. */
export interface Outcome {
  readonly mutant: Mutant;
  readonly isKilled: boolean;
  /** Of a survivor; undefined where there is none. */
  readonly reason: Reason | undefined;
}

/** All mutants of one manual. */
export interface Trial {
  readonly title: string;
  readonly manual: CheckedManual;
  readonly outcomes: readonly Outcome[];
}

/** Makes every mutant of the manual in a folder and checks each. */
export async function tryMutants(folder: string): Promise<Trial> {
  const manual = new CheckedManual(await readManualFiles(folder));
  const outcomes = [...mutantsOf(manual.linked, operators)].map((mutant): Outcome => {
    const isKilled = manual.found(mutant.file, mutant.text).length > 0;
    const reason = isKilled ? undefined : reasonFor(mutant, manual.linked);
    return { mutant, isKilled, reason };
  });
  return { title: manual.linked.manual.settings.title, manual, outcomes };
}

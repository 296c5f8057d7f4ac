import { describeConditionProblem } from '../applicability/index.ts';
import { type PullProblem, pullList } from '../derive/index.ts';
import { pullCsv, pullData, pullJson, pullText } from '../render/index.ts';
import { CannotRun } from './cannot-run.ts';
import { checkFolder } from './check-folder.ts';
import type { ExitCode } from './exit-code.ts';
import { noSuchMachine } from './no-such-machine.ts';
import { complain, paintFor, say } from './terminal.ts';
import { unknownProcedure } from './unknown-procedure.ts';

export interface PullOptions {
  /** Folder of the manual. */
  readonly in: string;
  /** The machines, as a condition of the manual's language; all of them when undefined. */
  readonly for: string | undefined;
  readonly format: 'text' | 'csv' | 'json';
}

/** Prints what must be handed out before some procedures start. The manual's findings are not told here. */
export async function pullCommand(ids: readonly string[], options: PullOptions): Promise<ExitCode> {
  const { linked, report } = await checkFolder(options.in);
  const { value, problems } = pullList(linked, ids, options.for);
  for (const problem of problems) stopAt(problem, options, linked.procedures.keys());
  if (value.procedures.length === 0) {
    throw new CannotRun(
      `None of these procedures is for a machine with ${options.for ?? 'these variants'}.`,
      'Run it without --for to see which machines they are for.',
    );
  }
  for (const problem of problems) {
    if (problem.code !== 'for-other-machines') continue;
    const { id } = problem.procedure.procedure;
    complain(`Left out: ${id} is for no machine with ${options.for ?? 'these variants'}.`);
  }
  if (report.summary.error > 0) {
    complain(
      'The manual has errors, so that this list may be wrong. Run `tallybolt inspect` to see them.',
    );
  }
  if (options.format === 'text') say(pullText(value, linked, paintFor(process.stdout)));
  else {
    const data = pullData(value, linked);
    say(options.format === 'csv' ? pullCsv(data) : pullJson(data));
  }
  return 0;
}

/** Throws CannotRun where what was asked for cannot be meant. */
function stopAt(problem: PullProblem, options: PullOptions, procedures: Iterable<string>): void {
  if (problem.code === 'unknown-procedure') {
    throw unknownProcedure(problem.id, options.in, procedures);
  }
  if (problem.code !== 'condition-wrong') return;
  throw problem.problem.code === 'never-true'
    ? noSuchMachine(options.for ?? 'these variants')
    : new CannotRun(`--for “${options.for}”: ${describeConditionProblem(problem.problem)}`);
}

import { join } from 'node:path';
import { createTwoFilesPatch } from 'diff';
import { applyEdits, withLineEndsOf } from '../report/index.ts';
import { Completer } from '../reverse/index.ts';
import { CannotRun } from './cannot-run.ts';
import { checkFolder } from './check-folder.ts';
import type { ExitCode } from './exit-code.ts';
import { say } from './terminal.ts';
import { unknownProcedure } from './unknown-procedure.ts';
import { writeChecked } from './write-checked.ts';

export interface CompleteOptions {
  /** Folder of the manual. */
  readonly in: string;
  /** Print what would change, and change nothing. */
  readonly dryRun: boolean;
}

/** Writes the steps that a procedure lacks before everything is home. 0 nothing lacks, 1 steps were missing. */
export async function completeCommand(id: string, options: CompleteOptions): Promise<ExitCode> {
  const checked = await checkFolder(options.in);
  const one = checked.linked.procedures.get(id);
  if (one === undefined) {
    throw unknownProcedure(id, options.in, checked.linked.procedures.keys());
  }
  const completion = new Completer(checked.linked).complete(id);
  if (completion === undefined) {
    say(`${one.procedure.front.title}: no step is missing to bring everything home.`);
    return 0;
  }
  const { file, text } = { file: one.procedure.file, text: one.procedure.text };
  const complete = applyEdits(
    text,
    completion.edits.map((edit) => withLineEndsOf(text, edit)),
  );
  say(createTwoFilesPatch(file, file, text, complete, 'as it is', 'completed', { context: 2 }));
  const steps = `${completion.steps.length} ${completion.steps.length === 1 ? 'step' : 'steps'}`;
  if (options.dryRun) say(`${steps} would be written. Without --dry-run they are.`);
  else {
    await write(join(checked.folder, file), text, complete);
    say(`${steps} written to ${file}. Read what was written, and run \`tallybolt inspect\` again.`);
  }
  return 1;
}

async function write(path: string, before: string, text: string): Promise<void> {
  const left = await writeChecked(path, before, text);
  if (left?.is === 'changed')
    throw new CannotRun(
      `${path} was changed since it was checked.`,
      'Nothing was changed. Run it again.',
    );
  if (left?.is === 'shut')
    throw new CannotRun(`${path} cannot be written: ${left.reason}.`, 'Nothing was changed.');
}

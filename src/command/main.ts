#!/usr/bin/env node
import { Command, CommanderError } from 'commander';
import { CannotRun } from './cannot-run.ts';
import { addComplete } from './complete-verb.ts';
import type { ExitCode } from './exit-code.ts';
import { addExplain } from './explain-verb.ts';
import { addHandOver } from './hand-over-verb.ts';
import { addHelp } from './help-verb.ts';
import { helpWords } from './help-words.ts';
import { addInspect } from './inspect-verb.ts';
import { addMerge } from './merge-verb.ts';
import { addPrint } from './print-verb.ts';
import { addProof } from './proof-verb.ts';
import { addPublish } from './publish-verb.ts';
import { addPull } from './pull-verb.ts';
import { addRedline } from './redline-verb.ts';
import { addScaffold } from './scaffold-verb.ts';
import { addServeEditor } from './serve-editor-verb.ts';
import { addShellWords } from './shell-words-verb.ts';
import { bearClosedPipes, complain } from './terminal.ts';
import { verbGroups } from './verb-help.ts';
import { version } from './version.ts';

/** Runs the command line; answers with the exit code and never throws. */
export async function main(words: readonly string[]): Promise<ExitCode> {
  let exit: ExitCode = 0;
  const program = commandLine((code) => {
    exit = code;
  });
  try {
    await program.parseAsync(words, { from: 'user' });
    return exit;
  } catch (error) {
    if (error instanceof CommanderError) {
      if (error.exitCode === 0) return 0;
      if (error.code === 'commander.help') return 2;
      const { mistakeIn } = await import('./mistake.ts');
      const { message, advice } = mistakeIn(error, words, program);
      complain(`tallybolt: ${message}\n${advice}`);
      return 2;
    }
    if (error instanceof CannotRun) {
      complain(`tallybolt: ${error.message}`);
      if (error.advice !== undefined) complain(error.advice);
      return 2;
    }
    complain('tallybolt: a fault of the program, not of the manual.');
    complain(error instanceof Error ? (error.stack ?? error.message) : String(error));
    return 2;
  }
}

/** Each verb is loaded when it is called: a check does not wait for what only printing needs. */
export function commandLine(done: (code: ExitCode) => void): Command {
  const program = new Command('tallybolt')
    .description('Checks workshop procedures like a ledger, then prints sheets to work from.')
    .usage('<verb> [options]')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .commandsGroup(verbGroups.programs)
    .helpCommand(false)
    .configureHelp(helpWords)
    .exitOverride()
    .configureOutput({ outputError: () => {} })
    .addHelpText('after', closing);

  addInspect(program, done);
  addProof(program, done);
  addPublish(program, done);
  addPrint(program, done);
  addPull(program, done);
  addMerge(program, done);
  addRedline(program, done);
  addComplete(program, done);
  addExplain(program, done);
  addHandOver(program, done);
  addScaffold(program, done);
  addServeEditor(program, done);
  addShellWords(program, done);
  addHelp(program, done);

  return program;
}

const closing = `
Exit codes: 0 clean, 1 findings, 2 could not run.
\`tallybolt <verb> --help\` has examples.`;

if (import.meta.main) {
  bearClosedPipes();
  process.exitCode = await main(process.argv.slice(2));
}

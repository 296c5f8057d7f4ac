#!/usr/bin/env node
import { Command, CommanderError, Option } from 'commander';
import { CannotRun } from './cannot-run.ts';
import { completeCommand } from './complete.ts';
import type { ExitCode } from './exit-code.ts';
import { explainCommand } from './explain.ts';
import { inspectCommand } from './inspect.ts';
import { publishCommand } from './publish.ts';
import { bearClosedPipes, complain } from './terminal.ts';
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
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
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

function commandLine(done: (code: ExitCode) => void): Command {
  const program = new Command('tallybolt')
    .description('Checks workshop procedures like a ledger, then prints sheets to work from.')
    .version(version)
    .exitOverride()
    .showSuggestionAfterError()
    .addHelpText('after', '\nExit codes: 0 clean, 1 findings, 2 could not run.');

  program
    .command('inspect')
    .description('check a manual and say what is wrong')
    .argument('[folder]', 'folder of the manual', '.')
    .addOption(
      new Option('--format <format>', 'how to print').choices(['text', 'json']).default('text'),
    )
    .addOption(
      new Option('--only <rules>', 'show and count only these rules: left-out,left-open').argParser(
        listed,
      ),
    )
    .addOption(
      new Option('--level <level>', 'leave out what is below')
        .choices(['error', 'warning', 'note'])
        .default('note'),
    )
    .addHelpText(
      'after',
      '\nExample:\n  tallybolt inspect content\n  tallybolt inspect --format json > report.json',
    )
    .action(async (folder, { format, only, level }) => {
      done(await inspectCommand(folder, { format, only: only ?? [], level }));
    });

  program
    .command('publish')
    .description('check a manual, then write its pages')
    .argument('[folder]', 'folder of the manual', '.')
    .option('--to <folder>', 'where the pages go', 'published')
    .option('--draft', 'write them in spite of errors, with DRAFT on every sheet', false)
    .addHelpText('after', '\nExample:\n  tallybolt publish content --to published')
    .action(async (folder, { to, draft }) => {
      done(await publishCommand(folder, { to, draft }));
    });

  program
    .command('complete')
    .description('write the steps that a procedure lacks before everything is home')
    .argument('<procedure>', 'id of the procedure')
    .option('--in <folder>', 'folder of the manual', '.')
    .option('--dry-run', 'print what would change, and change nothing', false)
    .addHelpText('after', '\nExample:\n  tallybolt complete replace-anvil --in content --dry-run')
    .action(async (procedure, { in: folder, dryRun }) => {
      done(await completeCommand(procedure, { in: folder, dryRun }));
    });

  program
    .command('explain')
    .description('say what a rule catches, why, and what to do; without a rule, list them')
    .argument('[rule]', 'id of the rule')
    .addHelpText('after', '\nExample:\n  tallybolt explain left-out')
    .action(async (rule) => {
      done(await explainCommand(rule));
    });

  return program;
}

/** Ids with commas between them; the option may be given several times. */
function listed(words: string, before: readonly string[] = []): readonly string[] {
  return [...before, ...words.split(',').map((id) => id.trim())];
}

if (import.meta.main) {
  bearClosedPipes();
  process.exitCode = await main(process.argv.slice(2));
}

#!/usr/bin/env node
import { Command, CommanderError, Option } from 'commander';
import { CannotRun } from './cannot-run.ts';
import type { ExitCode } from './exit-code.ts';
import { papers } from './paper.ts';
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

/** Each verb is loaded when it is called: a check does not wait for what only printing needs. */
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
      const { inspectCommand } = await import('./inspect.ts');
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
      const { publishCommand } = await import('./publish.ts');
      done(await publishCommand(folder, { to, draft }));
    });

  program
    .command('print')
    .description('check a manual, then print its sheets as PDF files')
    .argument('[folder]', 'folder of the manual', '.')
    .option('--to <folder>', 'where the PDF files go', 'printed')
    .addOption(
      new Option(
        '--only <procedures>',
        'print only these: replace-anvil,change-blades; all, with the charts, when absent',
      ).argParser(listed),
    )
    .option(
      '--for <condition>',
      'print only what applies to this machine: "winch = yes & brakes = overrun"',
    )
    .addOption(new Option('--paper <paper>', 'size of the paper').choices(papers).default('A4'))
    .option('--draft', 'print in spite of errors, with DRAFT on every sheet', false)
    .addHelpText(
      'after',
      '\nExample:\n  tallybolt print content --only replace-anvil,change-blades --paper Letter\n  tallybolt print content --for "winch = yes"',
    )
    .action(async (folder, { to, only, for: machine, paper, draft }) => {
      const { printCommand } = await import('./print.ts');
      done(await printCommand(folder, { to, only: only ?? [], for: machine, paper, draft }));
    });

  program
    .command('complete')
    .description('write the steps that a procedure lacks before everything is home')
    .argument('<procedure>', 'id of the procedure')
    .option('--in <folder>', 'folder of the manual', '.')
    .option('--dry-run', 'print what would change, and change nothing', false)
    .addHelpText('after', '\nExample:\n  tallybolt complete replace-anvil --in content --dry-run')
    .action(async (procedure, { in: folder, dryRun }) => {
      const { completeCommand } = await import('./complete.ts');
      done(await completeCommand(procedure, { in: folder, dryRun }));
    });

  program
    .command('pull')
    .description('list what must be handed out before a job: tools, parts, consumables, fluids')
    .argument('<procedures...>', 'ids of one procedure or more')
    .option('--in <folder>', 'folder of the manual', '.')
    .option('--for <condition>', 'only for these machines: "feed = hydraulic & winch"')
    .addOption(
      new Option('--format <format>', 'how to print')
        .choices(['text', 'csv', 'json'])
        .default('text'),
    )
    .addHelpText(
      'after',
      '\nExample:\n  tallybolt pull replace-anvil change-blades --in content --for "!winch"\n  tallybolt pull replace-anvil --in content --format csv > anvil.csv',
    )
    .action(async (procedures, { in: folder, for: machines, format }) => {
      const { pullCommand } = await import('./pull.ts');
      done(await pullCommand(procedures, { in: folder, for: machines, format }));
    });

  program
    .command('hand-over')
    .description('check a manual, then write the whole of it in an open format for other programs')
    .argument('[folder]', 'folder of the manual', '.')
    .addOption(
      new Option('--to <format>', 'the format: dita is OASIS DITA 1.3')
        .choices(['dita'])
        .default('dita'),
    )
    .option('--into <folder>', 'where the files go', 'handed-over')
    .option('--draft', 'write them in spite of errors, marked as a draft', false)
    .addHelpText('after', '\nExample:\n  tallybolt hand-over content --to dita --into handed-over')
    .action(async (folder, { into, draft }) => {
      const { handOverCommand } = await import('./hand-over.ts');
      done(await handOverCommand(folder, { into, draft }));
    });

  program
    .command('explain')
    .description('say what a rule catches, why, and what to do; without a rule, list them')
    .argument('[rule]', 'id of the rule')
    .addHelpText('after', '\nExample:\n  tallybolt explain left-out')
    .action(async (rule) => {
      const { explainCommand } = await import('./explain.ts');
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

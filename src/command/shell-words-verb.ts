import { Argument, type Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { shells } from './shell-scripts.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `shell-words`, and the hidden verb that its scripts ask; `done` takes the exit code. */
export function addShellWords(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('shell-words')
    .description('print a script with which a shell completes the words of this command')
    .addArgument(new Argument('<shell>', 'the shell').choices(shells))
    .action(async (shell: (typeof shells)[number]) => {
      const [{ shellScripts }, { say }] = await Promise.all([
        import('./shell-scripts.ts'),
        import('./terminal.ts'),
      ]);
      say(shellScripts[shell]);
      done(0);
    });

  tellHelp(verb, 'programs', {
    notes: [
      'Tab then completes verbs, options and their values, rules, procedures of the manual and folders. Put the script where your shell looks for it: ~/.local/share/bash-completion/completions/tallybolt for bash, a file _tallybolt in a folder of $fpath for zsh, ~/.config/fish/completions/tallybolt.fish for fish; then open a new shell. It asks the tallybolt that stands on the line, so that it fits every version.',
    ],
    examples: [
      {
        line: 'source <(tallybolt shell-words bash) && complete -p tallybolt',
        does: 'Completes in this bash at once, until it is closed.',
      },
      { line: 'tallybolt shell-words zsh > _tallybolt', does: 'Writes the script for zsh.' },
      { line: 'tallybolt shell-words fish > tallybolt.fish', does: 'Writes the script for fish.' },
    ],
    exits: { 0: 'printed', 2: 'there is no script for that shell' },
  });

  program
    .command('shell-next', { hidden: true })
    .argument('[words...]', 'those of the line after tallybolt, up to the one that is typed')
    .action(async (words: readonly string[]) => {
      const { shellNextCommand } = await import('./shell-next.ts');
      done(await shellNextCommand(program, words));
    });
}

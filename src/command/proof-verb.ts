import { type Command, InvalidArgumentError } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `proof`; `done` takes its exit code. */
export function addProof(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('proof')
    .description('show the pages while you write, with what the check finds at its step')
    .argument('[folder]', 'folder of the manual', '.')
    .option('--port <port>', 'port to listen at; the next free one where it is taken', portIn, 4711)
    .option(
      '--editor <command>',
      'how a place opens: "code --goto {file}:{line}:{column}"; without it, with $VISUAL or $EDITOR',
    )
    .action(async (folder, { port, editor }) => {
      const { proofCommand } = await import('./proof.ts');
      done(await proofCommand(folder, { port, editor }));
    });

  tellHelp(verb, 'writing', {
    notes: [
      'Prints the address of the pages and goes on until Ctrl+C. Only browsers on this machine are answered. Each time that a file of the manual is saved, it is checked and the open pages follow. Nothing in the folder is changed.',
    ],
    examples: [
      {
        line: 'tallybolt proof manual',
        does: 'Serves the manual; open the address that it prints.',
        runs: false,
      },
      {
        line: 'tallybolt proof manual --port 8700 --editor "code --goto {file}:{line}:{column}"',
        does: 'Starts at another port; a press on a place opens it with this command.',
        runs: false,
      },
    ],
    exits: { 0: 'stopped', 2: 'could not run' },
  });
}

function portIn(words: string): number {
  const port = Number(words);
  if (/^\d+$/.test(words) && port <= 65_535) return port;
  throw new InvalidArgumentError('A port is a whole number up to 65535.');
}

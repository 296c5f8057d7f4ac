import type { Command } from 'commander';
import type { ExitCode } from './exit-code.ts';
import { tellHelp } from './verb-help.ts';

/** Declares `serve-editor`; `done` takes its exit code. */
export function addServeEditor(program: Command, done: (code: ExitCode) => void): void {
  const verb = program
    .command('serve-editor')
    .description('help an editor while you write: findings, completion, rename (a language server)')
    .action(async () => {
      const { serveEditorCommand } = await import('./serve-editor.ts');
      done(serveEditorCommand());
    });

  tellHelp(verb, 'writing', {
    examples: [
      {
        line: 'tallybolt serve-editor',
        does: 'Speaks LSP 3.17 over standard input and output; an editor starts it, not a person.',
        runs: false,
      },
    ],
    exits: {
      0: 'the editor said that it leaves',
      1: 'the editor was gone without a word',
    },
    notes: ['The guide has the lines with which an editor starts it.'],
  });
}

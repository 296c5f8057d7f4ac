import { relative } from 'node:path';
import {
  type Answers,
  defaultMachine,
  defaultTitle,
  plainLine,
  scaffold,
} from '../scaffold/index.ts';
import { CannotRun } from './cannot-run.ts';
import type { ExitCode } from './exit-code.ts';
import type { ScaffoldOptions } from './scaffold-options.ts';
import { say } from './terminal.ts';
import { refuseUsedFolder, writeNewFolder } from './write-new-folder.ts';

/** Writes a new manual that passes the check. On a terminal it asks for what the options leave open. Ends with 0. */
export async function scaffoldCommand(folder: string, options: ScaffoldOptions): Promise<ExitCode> {
  await refuseUsedFolder(folder);
  const given = lined(options);
  const asked = isTerminal() ? await (await import('./ask-scaffold.ts')).askScaffold(given) : given;
  const files = scaffold(withDefaults(asked));
  await writeNewFolder(folder, files);
  const place = relative('', folder) || '.';
  const quoted = /^[\w./-]+$/.test(place) ? place : `"${place}"`;
  say(
    [
      `A new manual is in ${place}:`,
      ...files.map(({ path }) => `  ${path}`),
      '',
      'All figures in it are examples. Check it, look at its pages, then put your machine in its place:',
      `  tallybolt inspect ${quoted}`,
      `  tallybolt publish ${quoted} --to pages`,
    ].join('\n'),
  );
  return 0;
}

/** Nobody is asked in a pipe, and nobody where the answers would come from one. */
const isTerminal = (): boolean => process.stdin.isTTY === true && process.stdout.isTTY === true;

/** Texts as one line each. Throws CannotRun where nothing is left of one. */
function lined(options: ScaffoldOptions): ScaffoldOptions {
  const line = (option: string, text: string | undefined): string | undefined => {
    const plain = text === undefined ? undefined : plainLine(text);
    if (plain === '')
      throw new CannotRun(`--${option} has no words.`, 'Give it some, or leave it out.');
    return plain;
  };
  return {
    title: line('title', options.title),
    machine: line('machine', options.machine),
    units: options.units,
    prefix: line('prefix', options.prefix),
    publisher: line('publisher', options.publisher),
  };
}

function withDefaults({ title, machine, units, prefix, publisher }: ScaffoldOptions): Answers {
  const name = machine ?? defaultMachine;
  return {
    title: title ?? defaultTitle(name),
    machine: name,
    units: units ?? 'metric',
    prefix,
    publisher,
  };
}

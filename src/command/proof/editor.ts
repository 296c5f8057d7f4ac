import { spawn } from 'node:child_process';
import { basename } from 'node:path';
import { parseArgsStringToArgv } from 'string-argv';

/** How the proof opens a place in the writer's editor. */
export interface Editor {
  /** The command, as it was given. */
  readonly command: string;
  /** Opens a file at a line and column. Answers why it could not; undefined where it could. */
  open(file: string, line: number, column: number): Promise<string | undefined>;
}

/**
 * The editor that is asked for, else that of $VISUAL or $EDITOR; undefined where there is none, or where it is one
 * that needs the terminal in which the proof runs.
 */
export function editorFor(
  asked: string | undefined,
  environment: Readonly<Record<string, string | undefined>>,
): Editor | undefined {
  if (asked !== undefined && asked.trim() !== '') return withCommand(asked);
  const usual = [environment.VISUAL, environment.EDITOR].find(
    (command) => command !== undefined && command.trim() !== '',
  );
  return usual === undefined || needsTerminal(usual) ? undefined : withCommand(usual);
}

function withCommand(command: string): Editor {
  return {
    command,
    open: (file, line, column) =>
      command.includes('{file}')
        ? run(filled(command, { file, line, column }))
        : launch(command, `${file}:${line}:${column}`),
  };
}

/** The words of a command, with the place put in after they are parted: a blank in a path parts nothing. */
function filled(
  command: string,
  { file, line, column }: { readonly file: string; readonly line: number; readonly column: number },
): readonly string[] {
  return parseArgsStringToArgv(command).map((word) =>
    word
      .replaceAll('{line}', String(line))
      .replaceAll('{column}', String(column))
      .replaceAll('{file}', () => file),
  );
}

/** An editor that is still open after so many milliseconds has opened. */
const patience = 1500;

function run([program, ...words]: readonly string[]): Promise<string | undefined> {
  return new Promise((resolve) => {
    if (program === undefined) return resolve('the command of the editor is empty');
    const child = spawn(program, words, { stdio: 'ignore' });
    child.on('error', ({ message }) => resolve(message));
    child.on('exit', (code) =>
      resolve(code === 0 || code === null ? undefined : `${program} ended with exit code ${code}`),
    );
    child.unref();
    setTimeout(() => resolve(undefined), patience).unref();
  });
}

/** By the name of the editor the library knows how it is told a line. */
async function launch(command: string, place: string): Promise<string | undefined> {
  const { default: launchEditor } = await import('launch-editor');
  return await new Promise((resolve) => {
    launchEditor(place, command, (_file, message) =>
      resolve(message || `${command} could not be started`),
    );
    setTimeout(() => resolve(undefined), patience / 3);
  });
}

const terminalEditors =
  /^(vi|vim|nvim|view|nano|pico|ed|ex|joe|jed|ne|micro|mcedit|hx|helix|kak|mg|emacs|emacsclient)$/;

function needsTerminal(command: string): boolean {
  const [program = ''] = parseArgsStringToArgv(command);
  return terminalEditors.test(basename(program).replace(/\.exe$/i, ''));
}

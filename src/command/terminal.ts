import { styleText } from 'node:util';
import type { Paint } from '../report/index.ts';

type Format = Parameters<typeof styleText>[0];

/**
 * Colours where a person looks: on a terminal that knows them. `NO_COLOR` (no-color.org) turns them off,
 * `FORCE_COLOR` on, for pipes to a pager or a log that shows them; `FORCE_COLOR=0` is off as well.
 */
export function paintFor(stream: NodeJS.WriteStream): Paint {
  const wanted = wantsColour(stream.isTTY === true, process.env);
  const style = (format: Format) => (text: string) =>
    wanted ? styleText(format, text, { validateStream: false }) : text;
  return {
    level: {
      error: style(['bold', 'red']),
      warning: style(['bold', 'yellow']),
      note: style(['bold', 'cyan']),
    },
    faint: style('dim'),
    strong: style('bold'),
  };
}

/** `FORCE_COLOR` is the more exact wish, since it names one command; then `NO_COLOR`; an empty one is none. */
export function wantsColour(
  isTerminal: boolean,
  { FORCE_COLOR, NO_COLOR, TERM }: Readonly<Record<string, string | undefined>>,
): boolean {
  if (FORCE_COLOR !== undefined && FORCE_COLOR !== '')
    return FORCE_COLOR !== '0' && FORCE_COLOR !== 'false';
  return isTerminal && (NO_COLOR ?? '') === '' && TERM !== 'dumb';
}

/** A terminal on which a line can be written over: not a pipe, a file, a log of CI, or a dumb one. */
export function canOverwrite(
  stream: NodeJS.WriteStream,
  { TERM, CI }: Readonly<Record<string, string | undefined>> = process.env,
): boolean {
  return stream.isTTY === true && TERM !== 'dumb' && (CI ?? '') === '';
}

/** Columns of a terminal; undefined for a pipe or a file, whose lines nobody breaks. */
export function widthOf(stream: NodeJS.WriteStream): number | undefined {
  return stream.isTTY === true && stream.columns > 0 ? Math.max(40, stream.columns) : undefined;
}

export function say(text: string): void {
  process.stdout.write(text.endsWith('\n') ? text : `${text}\n`);
}

export function complain(text: string): void {
  process.stderr.write(text.endsWith('\n') ? text : `${text}\n`);
}

/** A reader that has enough, such as `head`, closes the pipe: then nobody listens, and nothing went wrong. */
export function bearClosedPipes(): void {
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code !== 'EPIPE') throw error;
    });
  }
}

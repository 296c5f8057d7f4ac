import { styleText } from 'node:util';
import { noPaint, type Paint } from '../report/index.ts';

type Style = Parameters<typeof styleText>[0];

const style = (format: Style) => (text: string) =>
  styleText(format, text, { validateStream: false });

const colours: Paint = {
  level: {
    error: style(['bold', 'red']),
    warning: style(['bold', 'yellow']),
    note: style(['bold', 'cyan']),
  },
  faint: style('dim'),
  strong: style('bold'),
};

/** Colours on a terminal; none in a pipe, a file or with NO_COLOR set. */
export function paintFor(stream: NodeJS.WriteStream): Paint {
  const wanted = stream.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb';
  return wanted ? colours : noPaint;
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

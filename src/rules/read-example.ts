/** A file of an example. One that has `unreadable` cannot be read, for that reason. */
export interface ExampleFile {
  readonly path: string;
  readonly text: string;
  readonly unreadable: string | undefined;
}

/** A finding that an example must give: where it starts, how wide it is on its first line, by which rule. */
export interface Mark {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly width: number;
  readonly rule: string;
  /** The message, where the example gives it. */
  readonly message: string | undefined;
}

export interface Example {
  /** As it stands on the page, with its marks. */
  readonly source: string;
  readonly files: readonly ExampleFile[];
  readonly marks: readonly Mark[];
  /** The day on which it is checked, YYYY-MM-DD; without it nothing expires. */
  readonly today: string | undefined;
}

/** A file that is being read; `last` is the line that a mark would stand under, counted from 1. */
interface Open {
  readonly path: string;
  readonly lines: string[];
  readonly unreadable: string | undefined;
  last: number;
}

const opened = (path: string, unreadable: string | undefined): Open => ({
  path,
  lines: [],
  unreadable,
  last: 1,
});

const heading = /^=== (\S+)(?: unreadable: (.+))?$/;
const day = /^=== today (\d{4}-\d{2}-\d{2})$/;
const repeat = /^=== repeat (\d{1,5}): (.*)$/;
const caret = /^( *)(\^+) ([a-z][a-z-]*)(?:: (.+))?$/;

/**
 * Reads an example. `=== path` starts a file; without one, all is `procedures/example.md`. A line of carets marks the
 * line above it, and is not part of the file. `=== today 2027-03-31` is the day of the check. `=== repeat 9: text` stands for nine such lines,
 * of which a mark below it means the first. A manual.yaml is supplied where there is none.
 */
export function readExample(source: string): Example {
  const files: Open[] = [];
  const marks: Mark[] = [];
  let today: string | undefined;
  for (const line of source.replace(/\n$/, '').split('\n')) {
    const date = day.exec(line)?.[1];
    if (date !== undefined) {
      today = date;
      continue;
    }
    const start = heading.exec(line);
    if (start?.[1] !== undefined) {
      files.push(opened(start[1], start[2]));
      continue;
    }
    let file = files.at(-1);
    if (file === undefined) {
      file = opened('procedures/example.md', undefined);
      files.push(file);
    }
    const again = repeat.exec(line);
    if (again?.[2] !== undefined) {
      file.last = file.lines.length + 1;
      file.lines.push(...Array.from({ length: Number(again[1]) }, () => again[2] ?? ''));
      continue;
    }
    const mark = markOn(line, file.path, file.last);
    if (mark === undefined) file.last = file.lines.push(line);
    else marks.push(mark);
  }
  const read = files.map(({ path, lines, unreadable }) => ({
    path,
    text: lines.map((line) => `${line}\n`).join(''),
    unreadable,
  }));
  return { source, files: withManual(read), marks, today };
}

function markOn(line: string, file: string, at: number): Mark | undefined {
  const found = caret.exec(line);
  if (found === null) return undefined;
  const [, indent = '', carets = '', rule = '', message] = found;
  return { file, line: at, column: indent.length + 1, width: carets.length, rule, message };
}

function withManual(files: readonly ExampleFile[]): readonly ExampleFile[] {
  if (files.some(({ path }) => path === 'manual.yaml')) return files;
  return [
    { path: 'manual.yaml', text: 'title: Example manual\n', unreadable: undefined },
    ...files,
  ];
}

import type { Finding } from '../../schemas/finding.ts';
import { isPicture, judgePicture } from '../../src/command/judge-picture.ts';
import { inspect } from '../../src/report/index.ts';
import type { Example, ExampleFile, Mark } from '../../src/rules/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';

/** Files of an example as the edge would hand them in: what is no text of the manual is only a name. */
export function filesOf(files: readonly ExampleFile[]): ManualFiles {
  const isText = (path: string): boolean => /\.(md|ya?ml)$/.test(path);
  return {
    texts: files.filter((file) => isText(file.path) && file.unreadable === undefined),
    unreadable: files.flatMap(({ path, unreadable }) =>
      unreadable === undefined ? [] : [{ path, reason: unreadable }],
    ),
    others: files.filter((file) => !isText(file.path)).map((file) => file.path),
    pictures: files
      .filter(({ path, text }) => isPicture(path) && text !== '')
      .map(({ path, text }) => judgePicture(path, new TextEncoder().encode(text))),
  };
}

export function findingsOf(example: Example): readonly Finding[] {
  return inspect(filesOf(example.files), 'test', dayOf(example)).report.findings;
}

const dayOf = ({ today }: Example): { today?: string } => (today === undefined ? {} : { today });

/** A finding as an example marks it. A place without width still needs one caret. */
export function markOf(finding: Finding, example: Example): Mark {
  const { file, start, end, rule, message } = finding;
  const lines = example.files.find(({ path }) => path === file)?.text.split('\n') ?? [];
  const line = lines[start.line - 1] ?? '';
  const last = end.line === start.line ? end.column : line.length + 1;
  return {
    file,
    line: start.line,
    column: start.column,
    width: Math.max(1, last - start.column),
    rule,
    message,
  };
}

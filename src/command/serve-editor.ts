import { readFileSync } from 'node:fs';
import { serveEditor } from '../editor/index.ts';
import { rules } from '../rules/index.ts';
import { CannotRun } from './cannot-run.ts';
import type { ExitCode } from './exit-code.ts';
import { packageFile } from './package-root.ts';
import { readManualFiles } from './read-manual-files.ts';
import { today } from './today.ts';
import { version } from './version.ts';

/** Serves an editor over standard input and output; the process ends when the editor leaves. Throws CannotRun on a terminal. */
export function serveEditorCommand(): ExitCode {
  if (process.stdin.isTTY) {
    throw new CannotRun(
      'serve-editor talks to an editor, not to a person.',
      'The guide says how an editor starts it. For the findings alone, run `tallybolt inspect`.',
    );
  }
  const families = new Map(rules.map(({ id, family }) => [id, family]));
  serveEditor(process.stdin, process.stdout, {
    version,
    today,
    readFolder: readManualFiles,
    rulePath: (rule) => {
      const family = families.get(rule);
      return family === undefined ? undefined : packageFile('src', 'rules', family, `${rule}.md`);
    },
    readText: (path) => readFileSync(path, 'utf8'),
  });
  return 0;
}

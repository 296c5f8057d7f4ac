import { spawn } from 'node:child_process';
import { chmod } from 'node:fs/promises';
import { delimiter, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Folder, makeFolder, type Ran } from './run.ts';

const main = fileURLToPath(new URL('../../src/command/main.ts', import.meta.url));

/** A shell in which `tallybolt` and `npx tallybolt` are the command of this working tree; `npm ci` has nothing to do. */
export interface Shell {
  /** Runs lines with bash, or another program that reads them from `-c`. */
  run(lines: string, cwd: string, env?: Readonly<Record<string, string>>): Promise<Ran>;
  remove(): Promise<void>;
}

export async function makeShell(): Promise<Shell> {
  const folder: Folder = await makeFolder('tallybolt-shim-');
  const call = `exec "${process.execPath}" "${main}" "$@"`;
  await folder.write({
    tallybolt: `#!/bin/sh\n${call}\n`,
    npx: `#!/bin/sh\n[ "$1 $2 $3" = '--no -- tallybolt' ] && shift 2\n[ "$1" = tallybolt ] || exit 127\nshift\n${call}\n`,
    npm: '#!/bin/sh\n[ "$*" = ci ] || exit 127\n',
  });
  for (const name of ['tallybolt', 'npx', 'npm']) await chmod(join(folder.path, name), 0o755);
  const path = `${folder.path}${delimiter}${process.env.PATH ?? ''}`;
  return {
    run: (lines, cwd, env = {}) =>
      new Promise((done, fail) => {
        const child = spawn('bash', ['-c', lines], {
          cwd,
          env: { ...process.env, ...env, PATH: path },
          stdio: ['ignore', 'pipe', 'pipe'],
        });
        const out: Buffer[] = [];
        const err: Buffer[] = [];
        child.stdout.on('data', (part: Buffer) => out.push(part));
        child.stderr.on('data', (part: Buffer) => err.push(part));
        child.on('error', fail);
        child.on('close', (code) =>
          done({ code, out: Buffer.concat(out).toString(), err: Buffer.concat(err).toString() }),
        );
      }),
    remove: folder.remove,
  };
}

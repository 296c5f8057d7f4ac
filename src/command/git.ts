import { spawn } from 'node:child_process';
import { CannotRun } from './cannot-run.ts';

export interface GitRan {
  readonly code: number;
  readonly out: Buffer;
  /** In English, whatever the language of the machine. */
  readonly err: string;
}

/**
 * Runs git in a folder that is there; it reads only. The repository is the one around that folder: what a git hook
 * is told of another place does not count. Throws CannotRun where there is no git.
 */
export function git(folder: string, words: readonly string[], input?: Buffer): Promise<GitRan> {
  return new Promise((done, fail) => {
    const child = spawn('git', ['--no-pager', '--no-optional-locks', ...words], {
      cwd: folder,
      env: environment(),
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    const [out, err]: [Buffer[], Buffer[]] = [[], []];
    child.stdout.on('data', (part: Buffer) => out.push(part));
    child.stderr.on('data', (part: Buffer) => err.push(part));
    // Where git ends before it has read all, its exit code says why.
    child.stdin.on('error', () => {});
    child.on('error', (error) => fail(withoutGit(error)));
    child.on('close', (code) =>
      done({ code: code ?? 1, out: Buffer.concat(out), err: Buffer.concat(err).toString().trim() }),
    );
    child.stdin.end(input ?? '');
  });
}

function environment(): NodeJS.ProcessEnv {
  const { GIT_DIR, GIT_WORK_TREE, GIT_COMMON_DIR, GIT_INDEX_FILE, GIT_PREFIX, ...others } =
    process.env;
  return { ...others, LC_ALL: 'C' };
}

function withoutGit(error: Error): CannotRun {
  const isMissing = 'code' in error && error.code === 'ENOENT';
  return new CannotRun(
    isMissing ? 'git was not found.' : `git cannot be started: ${error.message}.`,
    'Install git, or see that PATH leads to it: earlier revisions are read through it.',
  );
}

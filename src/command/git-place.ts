import { existsSync } from 'node:fs';
import { dirname, relative, sep } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { git } from './git.ts';

/** Where a folder stands in a repository. */
export interface GitPlace {
  /** A folder that is there, in which git can be run. */
  readonly folder: string;
  /** From the top of the repository, with `/`; empty for the top itself. */
  readonly path: string;
}

/** Finds the repository around a folder, which may be there no more. Throws CannotRun where there is none. */
export async function gitPlaceOf(wanted: string): Promise<GitPlace> {
  let folder = wanted;
  while (!existsSync(folder) && dirname(folder) !== folder) folder = dirname(folder);
  const { code, out, err } = await git(folder, ['rev-parse', '--show-prefix']);
  if (code !== 0) throw outside(wanted, err);
  const prefix = out.toString().replace(/\n$/, '').replace(/\/$/, '');
  const rest = relative(folder, wanted).replaceAll(sep, '/');
  return { folder, path: [prefix, rest].filter((part) => part !== '').join('/') };
}

function outside(wanted: string, err: string): CannotRun {
  if (/not a git repository/i.test(err)) {
    return new CannotRun(
      `${wanted} is not in a git repository, so that there is no earlier revision to compare with.`,
      'Name a folder of a repository, or run `git init` there and commit the manual first.',
    );
  }
  if (/dubious ownership/i.test(err)) {
    return new CannotRun(
      `git does not read the repository around ${wanted}, because another user owns it.`,
      'If you trust it, add it with `git config --global --add safe.directory <folder>`.',
    );
  }
  if (/work tree/i.test(err)) {
    return new CannotRun(
      `${wanted} is in a git repository without working files.`,
      'Make a clone of it, and name the folder of the manual in that.',
    );
  }
  return new CannotRun(`git cannot read the repository around ${wanted}: ${err}.`);
}

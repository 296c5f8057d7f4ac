import type { Side } from '../../schemas/redline.ts';
import { CannotRun } from './cannot-run.ts';
import { type GitRan, git } from './git.ts';
import type { GitPlace } from './git-place.ts';

/** A revision of a repository that is there. */
export interface GitCommit {
  /** All digits of its name. */
  readonly commit: string;
  readonly side: Side;
}

/** Finds the commit that a revision means. Throws CannotRun where there is none. */
export async function gitCommitOf(revision: string, { folder }: GitPlace): Promise<GitCommit> {
  // A name that begins so would be an option to git, and no revision can have it.
  if (revision.startsWith('-') || revision.includes('\0') || revision.trim() === '') {
    throw new CannotRun(
      `“${revision}” cannot be the name of a revision.`,
      'Name a tag, a branch or a commit, such as v1.2, main or HEAD~3.',
    );
  }
  const found = await git(folder, ['rev-parse', '--verify', '--quiet', `${revision}^{commit}`]);
  if (found.code !== 0) throw await unknown(revision, folder);
  const commit = found.out.toString().trim();
  const told = await git(folder, ['log', '-1', '--no-show-signature', '--format=%h%n%cs', commit]);
  const [short = '', date = ''] = told.out.toString().trim().split('\n');
  return {
    commit,
    side: {
      revision,
      commit: short === '' ? commit.slice(0, 10) : short,
      ...(date === '' ? {} : { date }),
    },
  };
}

async function unknown(revision: string, folder: string): Promise<CannotRun> {
  const shallow = await git(folder, ['rev-parse', '--is-shallow-repository']);
  if (shallow.out.toString().trim() === 'true') {
    return new CannotRun(
      `There is no revision ${revision} in this clone, which has only the newest commits.`,
      'Fetch the others first: `git fetch --unshallow --tags` (in CI: a fetch depth of 0).',
    );
  }
  const some = await git(folder, ['rev-parse', '--verify', '--quiet', 'HEAD']);
  return new CannotRun(
    some.code === 0
      ? `There is no revision ${revision} in this repository.`
      : `There is no revision ${revision}: nothing was committed in this repository yet.`,
    some.code === 0
      ? '`git tag` and `git branch --all` list names; a branch or tag of another clone must be fetched first.'
      : 'Commit the manual first; redline compares with what is committed.',
  );
}

/** What git said of something that should have worked. Throws CannotRun. */
export function stopAt({ err }: GitRan, what: string): never {
  throw new CannotRun(
    `git cannot read ${what}: ${err === '' ? 'it does not say why' : err}.`,
    'See whether the repository is whole: `git fsck` tells.',
  );
}

import { realpath } from 'node:fs/promises';
import { basename, dirname, join, relative, resolve, sep } from 'node:path';
import { CannotRun } from './cannot-run.ts';
import { type FolderKind, refuseForeignFolder } from './publish-folder.ts';
import { reasonOf } from './reason-of.ts';
import { mendAfterKilled } from './workshop.ts';

/**
 * The folder that an option names, as a command may replace it: links are followed, so that a link stays one, and
 * what a killed run left is mended. Throws CannotRun where it holds the manual or something else that would be lost.
 */
export async function outputFolder(
  named: string,
  kind: FolderKind,
  manual: string | undefined,
): Promise<string> {
  const target = await realPlace(resolve(named), kind);
  // A manual that is not there is told by the check.
  const own = manual && (await realpath(manual).catch(() => undefined));
  if (own !== undefined && isWithin(own, target)) {
    throw new CannotRun(
      `The manual is in ${target}, and ${kind.verb} would delete it with the rest of that folder.`,
      `Name a folder of its own with ${kind.option}.`,
    );
  }
  await mendAfterKilled(target);
  await refuseForeignFolder(target, kind);
  return target;
}

/** Where a path leads, though its end may not be there yet. */
async function realPlace(path: string, kind: FolderKind): Promise<string> {
  const rest: string[] = [];
  for (let at = path; ; at = dirname(at)) {
    try {
      return join(await realpath(at), ...rest);
    } catch (error) {
      const reason = reasonOf(error);
      if (reason !== 'it is gone' || dirname(at) === at) throw cannotBe(path, kind, reason);
      rest.unshift(basename(at));
    }
  }
}

function cannotBe(path: string, { whole, option }: FolderKind, reason: string): CannotRun {
  return new CannotRun(
    `The ${whole} cannot be written to ${path}: ${reason}.`,
    `Name another folder with ${option}.`,
  );
}

function isWithin(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way === '' || !(way === '..' || way.startsWith(`..${sep}`) || resolve(way) === way);
}

import { posix } from 'node:path';
import { git } from './git.ts';
import { stopAt } from './git-commit.ts';
import type { GitPlace } from './git-place.ts';
import { folderMarkers } from './publish-folder.ts';
import type { Refused, Walked } from './walk-folder.ts';

interface Entry {
  readonly kind: 'file' | 'link' | 'other';
  /** Name of its content. */
  readonly blob: string;
  readonly size: number;
}

/** What stands in a folder of a commit, as `walkFolder` tells it of a folder on the disk. */
export interface GitTree extends Walked {
  /** Size of a file in bytes. */
  sizeOf(path: string): number;
  /** Contents of files by path, in one go. */
  read(paths: readonly string[]): Promise<ReadonlyMap<string, Buffer>>;
}

/** The folder of the manual in a commit; undefined where that commit has no such folder. */
export async function gitTreeOf(commit: string, place: GitPlace): Promise<GitTree | undefined> {
  const tree = await git(place.folder, [
    'rev-parse',
    '--verify',
    '--quiet',
    `${commit}:${place.path}`,
  ]);
  if (tree.code !== 0) return undefined;
  const name = tree.out.toString().trim();
  const kind = await git(place.folder, ['cat-file', '-t', name]);
  if (kind.code !== 0) stopAt(kind, `the folder in ${commit}`);
  if (kind.out.toString().trim() !== 'tree') return undefined;
  const listed = await git(place.folder, ['ls-tree', '-r', '-l', '-z', '--full-tree', name]);
  if (listed.code !== 0) stopAt(listed, `the folder in ${commit}`);
  const entries = entriesOf(listed.out);
  const blobs = new Blobs(place.folder);
  const links = [...entries].filter(([, { kind: of }]) => of === 'link');
  const targets = await blobs.read(links.map(([, { blob }]) => blob));
  const files = new Map<string, Entry>();
  const refused: Refused[] = foldersIn(entries).map((path) => ({
    path,
    kind: 'folder',
    reason: 'it is a folder',
  }));
  for (const [path, entry] of entries) {
    if (entry.kind === 'file') files.set(path, entry);
    else if (entry.kind === 'other') refused.push({ path, kind: 'other', reason: 'it is no file' });
    else {
      const found = followed(path, entries, (blob) => targets.get(blob)?.toString() ?? '');
      if (typeof found === 'string') refused.push({ path, kind: 'link', reason: found });
      else files.set(path, found);
    }
  }
  return {
    files: [...files.keys()].sort(),
    refused: refused.sort((a, b) => (a.path < b.path ? -1 : 1)),
    sizeOf: (path) => files.get(path)?.size ?? 0,
    read: async (paths) => {
      const wanted = paths.flatMap((path) => files.get(path)?.blob ?? []);
      const read = await blobs.read(wanted);
      return new Map(
        paths.flatMap((path) => {
          const bytes = read.get(files.get(path)?.blob ?? '');
          return bytes === undefined ? [] : [[path, bytes] as const];
        }),
      );
    },
  };
}

/** Lines `100644 blob <name> <size>\t<path>`, with a zero byte after each; left out what `walkFolder` leaves out. */
function entriesOf(listed: Buffer): ReadonlyMap<string, Entry> {
  const all = new Map<string, Entry>();
  for (const line of listed.toString().split('\0')) {
    const [, mode = '', blob = '', size = '', path = ''] =
      /^(\d+) \w+ ([0-9a-f]+) +(\d+|-)\t(.+)$/s.exec(line) ?? [];
    if (path === '') continue;
    const kind = mode === '120000' ? 'link' : mode.startsWith('100') ? 'file' : 'other';
    all.set(path, { kind, blob, size: Number(size) || 0 });
  }
  const made = [...all.keys()]
    .filter((path) => folderMarkers.includes(posix.basename(path)) && path.includes('/'))
    .map((path) => `${posix.dirname(path)}/`);
  const isLeftOut = (path: string): boolean =>
    path.split('/').some((name) => name.startsWith('.') || name === 'node_modules') ||
    made.some((folder) => path.startsWith(folder));
  return new Map([...all].filter(([path]) => !isLeftOut(path)));
}

function foldersIn(entries: ReadonlyMap<string, Entry>): readonly string[] {
  const folders = new Set<string>();
  for (const path of entries.keys()) {
    for (let up = posix.dirname(path); up !== '.'; up = posix.dirname(up)) folders.add(up);
  }
  return [...folders];
}

/** The file that a link leads to in the end, or why it is not followed. */
function followed(
  path: string,
  entries: ReadonlyMap<string, Entry>,
  targetOf: (blob: string) => string,
): Entry | string {
  let at = path;
  const seen = new Set<string>();
  for (;;) {
    const entry = entries.get(at);
    if (entry === undefined) {
      const isFolder = [...entries.keys()].some((other) => other.startsWith(`${at}/`));
      return isFolder ? 'it is a link to a folder' : 'it is a link that leads nowhere (it is gone)';
    }
    if (entry.kind === 'file') return entry;
    if (entry.kind === 'other') return 'it is a link to a folder';
    if (seen.has(at)) return 'it is a link that leads nowhere (it leads back to itself)';
    seen.add(at);
    const target = targetOf(entry.blob);
    at = posix.normalize(posix.join(posix.dirname(at), target));
    if (posix.isAbsolute(target) || at === '..' || at.startsWith('../'))
      return 'it is a link that leads out of the folder of the manual';
  }
}

class Blobs {
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Contents by name: after each line `<name> blob <size>` so many bytes and a line end. */
  async read(names: readonly string[]): Promise<ReadonlyMap<string, Buffer>> {
    const found = new Map<string, Buffer>();
    if (names.length === 0) return found;
    const asked = Buffer.from(`${[...new Set(names)].join('\n')}\n`);
    const ran = await git(this.#folder, ['cat-file', '--batch'], asked);
    if (ran.code !== 0) stopAt(ran, 'the files of the manual');
    const { out } = ran;
    let at = 0;
    while (at < out.length) {
      const end = out.indexOf(10, at);
      const [name = '', kind = '', size = ''] = out.toString('utf8', at, end).split(' ');
      if (kind !== 'blob') {
        const err = `${name} ${kind} (a clone without all contents has to fetch them first)`;
        stopAt({ ...ran, err }, 'the files of the manual');
      }
      found.set(name, out.subarray(end + 1, end + 1 + Number(size)));
      at = end + 1 + Number(size) + 1;
    }
    return found;
  }
}

import { existsSync } from 'node:fs';
import { basename, join, relative, sep } from 'node:path';
import { watch } from 'chokidar';
import { folderMarkers } from '../publish-folder.ts';

export interface FolderWatch {
  close(): Promise<void>;
}

/** Changes that come within so many milliseconds are one. */
const pause = 8;
/** A file is looked at once more when it has been left alone for so many milliseconds. */
const settled = 150;

/**
 * Watches a manual's folder. `changed` is told the paths, from the folder and with `/`, of files that were written,
 * are new or have gone; it is called anew only when it has answered.
 */
export async function watchFolder(
  folder: string,
  changed: (paths: ReadonlySet<string>) => Promise<void>,
): Promise<FolderWatch> {
  let waiting = new Set<string>();
  let lately = new Set<string>();
  let timer: NodeJS.Timeout | undefined;
  let secondLook: NodeJS.Timeout | undefined;
  let isBusy = false;
  const tell = async (): Promise<void> => {
    timer = undefined;
    if (isBusy) return;
    isBusy = true;
    while (waiting.size > 0) {
      const paths = waiting;
      waiting = new Set();
      await changed(paths);
      for (const path of paths) lately.add(path);
      clearTimeout(secondLook);
      secondLook = setTimeout(() => void again(), settled);
    }
    isBusy = false;
  };
  // Of two writes in quick succession the watcher may tell the first alone.
  const again = async (): Promise<void> => {
    // Whoever is busy looks again afterwards.
    if (isBusy) return;
    const paths = lately;
    lately = new Set();
    await changed(paths);
  };
  const watcher = watch(folder, {
    ignoreInitial: true,
    followSymlinks: false,
    ignored: (path, stats) => isForeign(folder, path, stats?.isDirectory() ?? false),
  });
  watcher.on('all', (_event, path) => {
    waiting.add(relative(folder, path).split(sep).join('/'));
    timer ??= setTimeout(() => void tell(), pause);
  });
  // A folder that cannot be watched is told by the next reading.
  watcher.on('error', () => undefined);
  await new Promise<void>((resolve) => watcher.once('ready', resolve));
  return {
    close: async () => {
      clearTimeout(timer);
      clearTimeout(secondLook);
      await watcher.close();
    },
  };
}

/** What no manual is read from either: names with a dot in front, packages, folders that were published. */
function isForeign(folder: string, path: string, isDirectory: boolean): boolean {
  if (path === folder) return false;
  const name = basename(path);
  if (name.startsWith('.') || name === 'node_modules') return true;
  return isDirectory && folderMarkers.some((marker) => existsSync(join(path, marker)));
}

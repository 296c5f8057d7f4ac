import { existsSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

/** The path of a file on this disk; undefined for texts that are in no file, and for addresses that are none. */
export function pathOf(uri: string): string | undefined {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined;
  }
}

export const uriOf = (path: string): string => pathToFileURL(path).href;

/** The nearest folder upward that holds a manual. */
export function manualFolderOf(path: string): string | undefined {
  for (let folder = dirname(path); ; folder = dirname(folder)) {
    if (existsSync(join(folder, 'manual.yaml'))) return folder;
    if (dirname(folder) === folder) return undefined;
  }
}

/** The path from a manual's folder, with `/`. */
export const pathIn = (folder: string, path: string): string =>
  relative(folder, path).split(sep).join('/');

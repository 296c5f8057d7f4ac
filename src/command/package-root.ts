import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the package: the nearest one above this file with a package.json, whether run from source or built. */
export const packageRoot: string = nearestPackage(dirname(fileURLToPath(import.meta.url)));

export const packageFile = (...parts: readonly string[]): string => join(packageRoot, ...parts);

function nearestPackage(folder: string): string {
  if (existsSync(join(folder, 'package.json'))) return folder;
  const parent = dirname(folder);
  return parent === folder ? folder : nearestPackage(parent);
}

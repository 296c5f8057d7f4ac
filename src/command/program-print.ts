import { createHash } from 'node:crypto';
import { globSync, statSync } from 'node:fs';
import { extname } from 'node:path';
import { packageRoot } from './package-root.ts';
import { version } from './version.ts';

/**
 * A text that is another for another program: a kept result is only good for the program that gave it. A version that
 * was published never changes; of a working tree, each file's size and time of change count.
 */
export function programPrint(): string {
  known ??= print();
  return known;
}

let known: string | undefined;

function print(): string {
  if (extname(import.meta.url) !== '.ts') return version;
  const print = createHash('sha256').update(version);
  const files = globSync(['src/**/*.{ts,md}', 'schemas/*.ts', 'package-lock.json'], {
    cwd: packageRoot,
  });
  for (const file of files.sort()) {
    const { size, mtimeMs } = statSync(`${packageRoot}/${file}`);
    print.update(`${file} ${size} ${mtimeMs}\n`);
  }
  return print.digest('base64');
}

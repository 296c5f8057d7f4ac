import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export const about = z
  .object({
    version: z.string(),
    engines: z.object({ node: z.string() }),
    exports: z.record(z.string(), z.unknown()),
    dependencies: z.record(z.string(), z.string()),
  })
  .parse(JSON.parse(await readFile(join(root, 'package.json'), 'utf8')));

export interface Ran {
  readonly code: number | string | undefined;
  readonly out: string;
  readonly err: string;
}

/** A folder in which the packed package is installed, and nothing that it does not ask for. */
export interface Installed {
  readonly folder: string;
  /** Folder of the package itself. */
  readonly own: string;
  readonly tarball: string;
  write(files: Readonly<Record<string, string>>): Promise<void>;
  /** Runs a script with Node in the folder, or in one below it. */
  node(words: readonly string[], below?: string): Promise<Ran>;
  remove(): Promise<void>;
}

/**
 * Packs the project as it is and installs the tarball in an empty folder. Its dependencies are links to those of the project, so
 * that no network is needed; what it only has for development is not there.
 */
export async function install(): Promise<Installed> {
  const folder = await mkdtemp(join(tmpdir(), 'tallybolt-installed-'));
  const packed = await run('npm', ['pack', '--json', '--pack-destination', folder], root, {
    PATH: `${join(root, 'node_modules/.bin')}${delimiter}${process.env.PATH}`,
  });
  if (packed.code !== 0) throw new Error(`npm pack: ${packed.out}${packed.err}`);
  const tarball = join(folder, `tallybolt-${about.version}.tgz`);
  const modules = join(folder, 'node_modules');
  const own = join(modules, 'tallybolt');
  await mkdir(own, { recursive: true });
  const unpacked = await run('tar', ['-xzf', tarball, '-C', own, '--strip-components=1'], folder);
  if (unpacked.code !== 0) throw new Error(`tar: ${unpacked.err}`);
  for (const name of Object.keys(about.dependencies)) await link(name, modules);
  const write: Installed['write'] = async (files) => {
    for (const [path, text] of Object.entries(files)) {
      await mkdir(dirname(join(folder, path)), { recursive: true });
      await writeFile(join(folder, path), text);
    }
  };
  await write({ 'package.json': '{ "type": "module" }' });
  return {
    folder,
    own,
    tarball,
    write,
    node: (words, below = '.') =>
      run(process.execPath, words, join(folder, below), { ASTRO_TELEMETRY_DISABLED: '1' }),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Makes one more package of the project known in a folder of packages. */
export async function link(name: string, modules: string): Promise<void> {
  await mkdir(dirname(join(modules, name)), { recursive: true });
  await symlink(join(root, 'node_modules', name), join(modules, name), 'junction');
}

/** The manual of the readme's five minutes, by path. */
export async function readmePump(): Promise<Record<string, string>> {
  const readme = await readFile(join(root, 'README.md'), 'utf8');
  const files = [...readme.matchAll(/^`(pump\/[^`]+)`\n\n((?: {4}.*\n|\n)+)/gm)];
  return Object.fromEntries(
    files.map(([, path = '', text = '']) => [path, `${text.replace(/^ {4}/gm, '').trim()}\n`]),
  );
}

export function run(
  command: string,
  words: readonly string[],
  cwd: string,
  env: Readonly<Record<string, string>> = {},
): Promise<Ran> {
  return new Promise((done) => {
    execFile(
      command,
      words,
      { cwd, env: { ...process.env, ...env }, maxBuffer: 1 << 28 },
      (error, out, err) => done({ code: error === null ? 0 : (error.code ?? undefined), out, err }),
    );
  });
}

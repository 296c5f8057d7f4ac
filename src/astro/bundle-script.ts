import { readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

export interface BundleOptions {
  /** Comment at the top: the terms of what is bundled. */
  readonly banner?: string;
  /** Names that are not declared in the script, with the JSON that takes their place. */
  readonly define?: Readonly<Record<string, string>>;
}

/** A script of the site as one plain script, with all that it imports. `entry` is its path from `site/`. */
export async function bundleScript(
  entry: string,
  { banner = '', define = {} }: BundleOptions = {},
): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL(`../../site/${entry}`, import.meta.url))],
    bundle: true,
    format: 'iife',
    target: 'es2022',
    minify: true,
    write: false,
    charset: 'utf8',
    legalComments: 'none',
    banner: { js: banner },
    // The same bytes wherever the site's sources lie, and whatever settings lie above them.
    tsconfigRaw: { compilerOptions: { strict: true } },
    define: { 'process.env.NODE_ENV': '"production"', ...define },
  });
  return outputFiles.map(({ text }) => text).join('');
}

/** The terms of a package that goes out with the site, as a comment. */
export async function licence(name: string, file: string): Promise<string> {
  const main = import.meta.resolve(name);
  const folder = main.slice(0, main.lastIndexOf(`/${name}/`));
  const text = await readFile(fileURLToPath(`${folder}/${name}/${file}`), 'utf8');
  return `/*! With ${name}:\n${text.trim().replaceAll('*/', '* /')}\n*/`;
}

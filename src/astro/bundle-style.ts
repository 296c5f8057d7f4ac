import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** A style of the site as one sheet, with all that it imports. `entry` is its path from `site/`. */
export async function bundleStyle(entry: string): Promise<string> {
  const { outputFiles } = await build({
    entryPoints: [fileURLToPath(new URL(`../../site/${entry}`, import.meta.url))],
    bundle: true,
    write: false,
    charset: 'utf8',
    target: ['chrome105', 'firefox121', 'safari16'],
  });
  return outputFiles.map(({ text }) => text).join('');
}

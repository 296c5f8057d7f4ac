import { existsSync } from 'node:fs';
import { symlink } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { searchScripts, siteConfig } from '../astro/index.ts';
import type { Book } from '../render/index.ts';
import { packageFile } from './package-root.ts';

let last: Promise<unknown> = Promise.resolve();

/**
 * Builds the pages of a Book into `outDir`, quietly. All that Astro writes beside them (its types, its
 * caches) goes below `workDir`, an empty folder, so that the package may lie where nothing can be
 * written. One build at a time: Astro keeps its content layer in variables of the process. Throws what
 * Astro throws, and where a page of the Book is missing afterwards, since Astro logs some faults and goes on.
 */
export function buildSite(book: Book, outDir: string, workDir: string): Promise<void> {
  const build = last.then(
    () => buildAlone(book, outDir, workDir),
    () => buildAlone(book, outDir, workDir),
  );
  last = build;
  return build;
}

async function buildAlone(book: Book, outDir: string, workDir: string): Promise<void> {
  await withEnvironment({ ASTRO_TELEMETRY_DISABLED: '1', NODE_ENV: 'production' }, async () => {
    const { build } = await import('astro');
    const config = siteConfig(book);
    await symlink(packagesFolder(), join(workDir, 'node_modules'), 'junction');
    await build({
      ...config,
      configFile: false,
      root: workDir,
      srcDir: packageFile('site'),
      outDir,
      build: { ...config.build, server: join(workDir, 'server') },
      adapter: keepsToItsFolder,
      cacheDir: join(workDir, 'cache'),
      vite: { ...config.vite, cacheDir: join(workDir, 'vite') },
      logLevel: 'silent',
    });
  });
  const missing = pagesOf(book).filter((page) => !existsSync(join(outDir, page)));
  if (missing.length > 0)
    throw new Error(`The site was built without these pages: ${missing.join(', ')}.`);
}

/**
 * Astro runs the pages' code from below the working folder, unless an adapter says that it may run from
 * `build.server`: there alone it finds its packages, and litters nobody's folder.
 */
const keepsToItsFolder: AstroIntegration = {
  name: 'tallybolt-folders',
  hooks: {
    'astro:config:done': ({ setAdapter }) => {
      setAdapter({
        name: 'tallybolt-folders',
        entrypointResolution: 'auto',
        adapterFeatures: { buildOutput: 'static', preserveBuildServerDir: true },
        supportedAstroFeatures: { staticOutput: 'stable' },
      });
    },
  },
};

/** The folder from which Astro's packages load: it looks for them at its root. */
function packagesFolder(): string {
  return dirname(dirname(fileURLToPath(import.meta.resolve('astro/package.json'))));
}

/** Files that a whole site has, from its root. */
function pagesOf(book: Book): string[] {
  return [
    '',
    'charts/',
    'torque-chart/',
    'fluids/',
    'tools/',
    'parts/',
    'pull-lists/',
    'hazards/',
    'signal-words/',
    'search/',
    'findings/',
    'rules/',
    ...book.rules.map(({ family }) => `rules/${family}/`),
    ...searchScripts,
    ...book.sheets.map(href),
    ...book.sheets.flatMap(({ pullFiles: { csv, json }, dataFile }) => [
      csv.href,
      json.href,
      dataFile.href,
    ]),
    ...book.machines.map(href),
  ].map((page) => (page === '' || page.endsWith('/') ? `${page}index.html` : page));

  function href(page: { readonly href: string }): string {
    return page.href;
  }
}

async function withEnvironment(
  values: Readonly<Record<string, string>>,
  work: () => Promise<void>,
): Promise<void> {
  const before = new Map(Object.keys(values).map((name) => [name, process.env[name]]));
  Object.assign(process.env, values);
  try {
    await work();
  } finally {
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
}

import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, extname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import ts from 'typescript';
import { z } from 'zod';
import { keepPublicDeclarations } from './public-declarations.ts';

// Run by `npm run build`, and so by `npm pack`. Node strips no types below node_modules: what goes out is JavaScript.
// `dist/` is the tree in small, so that files find each other there as they do here: src and schemas as JavaScript, site
// as Astro reads it, the pages of the rules, and declarations of what programs may import.
const root = fileURLToPath(new URL('../../', import.meta.url));
const dist = join(root, 'dist');

const about = z
  .object({
    name: z.string(),
    version: z.string(),
    type: z.string(),
    sideEffects: z.array(z.string()),
    exports: z.record(
      z.string(),
      z.union([z.string(), z.object({ types: z.string().optional(), default: z.string() })]),
    ),
  })
  .parse(JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')));

const entries = Object.values(about.exports).flatMap((one) =>
  typeof one === 'string' || one.types === undefined ? [] : [join(root, one.types)],
);

rmSync(dist, { recursive: true, force: true });
compile();
copy('src', (path) => extname(path) !== '.ts');
copy('site', (path) => !/(^|\/)tsconfig\.json$|^site\/pictures\//.test(path), fromBuiltCore);
bundleStyles();
keepPublicDeclarations(dist, entries);
writePackageFile();

/** JavaScript and declarations of `src` and `schemas`. Ends the process where a type is wrong. */
function compile(): void {
  const config = ts.getParsedCommandLineOfConfigFile(join(root, 'tsconfig.build.json'), undefined, {
    ...ts.sys,
    onUnRecoverableConfigFileDiagnostic: refuse,
  });
  if (config === undefined) throw new Error('tsconfig.build.json cannot be read.');
  const program = ts.createProgram(config.fileNames, config.options);
  const found = [...ts.getPreEmitDiagnostics(program), ...program.emit().diagnostics];
  if (found.length > 0) refuse(...found);
}

function refuse(...found: readonly ts.Diagnostic[]): never {
  process.stderr.write(
    ts.formatDiagnostics(found, {
      getCanonicalFileName: (name) => name,
      getCurrentDirectory: () => root,
      getNewLine: () => '\n',
    }),
  );
  process.exit(2);
}

/** Copies the files below a folder that are `wanted`, changed by `change`. Paths are from the root, with `/`. */
function copy(
  folder: string,
  wanted: (path: string) => boolean,
  change?: (text: string, path: string) => string,
): void {
  for (const path of filesBelow(join(root, folder)).map((name) => `${folder}/${name}`)) {
    if (!wanted(path)) continue;
    const target = join(dist, path);
    mkdirSync(dirname(target), { recursive: true });
    if (change !== undefined && /\.(ts|astro)$/.test(path))
      writeFileSync(target, change(readFileSync(join(root, path), 'utf8'), path));
    else cpSync(join(root, path), target);
  }
}

/** A file of the site that takes what it needs of `src` from the JavaScript. The site's own files stay as Astro reads them. */
function fromBuiltCore(text: string, path: string): string {
  return text.replace(
    /(\bfrom\s+|\bimport\(|\bimport\s+)'(\.{1,2}\/[^']+)\.ts'/g,
    (whole, before: string, wanted: string) => {
      const target = join(dirname(path), wanted).replaceAll('\\', '/');
      return /^(src|schemas)\//.test(target) ? `${before}'${wanted}.js'` : whole;
    },
  );
}

/** The looks of the sheets as one file, for pages of others. */
function bundleStyles(): void {
  buildSync({
    entryPoints: [join(root, 'site/styles/site.css')],
    outfile: join(dist, 'sheet.css'),
    bundle: true,
    minify: true,
    target: ['chrome105', 'firefox121', 'safari16'],
    logLevel: 'warning',
  });
}

/** What the files of `dist/` find as the package that they belong to. */
function writePackageFile(): void {
  const { name, version, type, sideEffects } = about;
  const inDist = sideEffects.map((path) => path.replace('./dist/', './'));
  const text = JSON.stringify({ name, version, type, sideEffects: inDist }, undefined, 2);
  writeFileSync(join(dist, 'package.json'), `${text}\n`);
}

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

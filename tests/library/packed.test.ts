import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { build } from 'esbuild';
import { publint } from 'publint';
import { formatMessage } from 'publint/utils';
import { minVersion, subset } from 'semver';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { about, type Installed, install, link, readmePump, root } from './installed.ts';

const chapter = readFileSync(join(root, 'site/guide/15-as-a-library.md'), 'utf8');
/** Programs of the guide, by the name in their first line, with what the guide says that they print. */
const examples = [
  ...chapter.matchAll(
    /^```(?:js|ts)\n(\/\/ (\S+)\n[\s\S]*?)^```\n(?:\nIt prints\n\n```text\n([\s\S]*?)^```)?/gm,
  ),
].map(([, source = '', name = '', prints]) => ({ name, source, prints }));

let there: Installed;
const command = 'node_modules/tallybolt/dist/src/command/start.js';
const pump = await readmePump();
const balanced = Object.fromEntries(
  Object.entries(pump).map(([path, text]) => [
    path.replace('pump/', 'sound/'),
    text.replace(' qty=4', ''),
  ]),
);

beforeAll(async () => {
  there = await install();
  await there.write({ ...pump, ...balanced });
});
afterAll(() => there?.remove());

describe('the package', () => {
  test('holds what runs and what is read, and nothing of the workshop', () => {
    const files = filesBelow(there.own);
    const tops = new Set(files.map((path) => path.split('/', 1)[0]));
    expect([...tops].sort()).toEqual(
      ['CHANGELOG.md', 'LICENSE', 'README.md', 'dist', 'package.json', 'schemas'].sort(),
    );
    const typescript = files.filter((path) => /(?<!\.d)\.ts$/.test(path));
    expect(typescript.filter((path) => !path.startsWith('dist/site/'))).toEqual([]);
    expect(files.filter((path) => /tsconfig|\.test\.|\.png$/.test(path))).toEqual([]);
    const pages = filesBelow(join(root, 'src/rules')).filter((path) => path.endsWith('.md'));
    expect(pages.length).toBeGreaterThan(50);
    for (const page of pages) expect(files).toContain(`dist/src/rules/${page}`);
  });

  test('declares only what programs may import, and what that speaks of', () => {
    const rooms = filesBelow(there.own)
      .filter((path) => path.endsWith('.d.ts'))
      .map((path) => path.replace(/^dist\/(src\/)?/, '').split('/', 1)[0]);
    expect([...new Set(rooms)].sort()).toEqual([
      'command',
      'library',
      'report',
      'schemas',
      'source',
    ]);
  });

  test('is what publint asks of a package', async () => {
    const { messages, pkg } = await publint({ pkgDir: there.own, strict: true, pack: false });
    expect(messages.map((message) => formatMessage(message, pkg))).toEqual([]);
  });

  test('asks for a Node that all its dependencies run on', () => {
    const others = Object.keys(about.dependencies).flatMap((name) => {
      const { engines } = JSON.parse(
        readFileSync(join(root, 'node_modules', name, 'package.json'), 'utf8'),
      );
      const asked: unknown = engines?.node;
      return typeof asked === 'string' ? [{ name, asked }] : [];
    });
    expect(others.length).toBeGreaterThan(5);
    expect(others.filter(({ asked }) => !subset(about.engines.node, asked))).toEqual([]);
  });

  test('runs nothing when it is installed', () => {
    const { scripts } = JSON.parse(readFileSync(join(there.own, 'package.json'), 'utf8'));
    const hooks = ['preinstall', 'install', 'postinstall', 'prepare'];
    expect(Object.keys(scripts).filter((name) => hooks.includes(name))).toEqual([]);
  });
});

describe('the command', () => {
  test('inspect finds what it finds from source', async () => {
    const words = ['inspect', 'pump', '--format', 'json'];
    const installed = await there.node([command, ...words]);
    const source = await there.node([join(root, 'src/command/main.ts'), ...words]);
    expect(installed).toMatchObject({ code: 1, err: '' });
    expect(installed.out).toContain('"rule": "left-out"');
    expect(installed.out).toBe(source.out);
  });

  test('inspect passes what balances', async () => {
    expect(await there.node([command, 'inspect', 'sound'])).toMatchObject({ code: 0, err: '' });
  });

  test('publish writes the pages that it writes from source', async () => {
    const installed = await there.node([command, 'publish', 'sound', '--to', 'pages']);
    expect(installed).toMatchObject({ code: 0, err: '' });
    const main = join(root, 'src/command/main.ts');
    const source = await there.node([main, 'publish', 'sound', '--to', 'from-source']);
    expect(source).toMatchObject({ code: 0, err: '' });
    const pages = textsBelow(join(there.folder, 'pages'));
    const others = textsBelow(join(there.folder, 'from-source'));
    expect([...pages.keys()]).toEqual([...others.keys()]);
    // A bundler names what it shortens in scripts after the order of what it reads, and offline.js lists their hashes.
    const differing = [...pages].filter(([path, text]) => others.get(path) !== text);
    const isScript = ([path]: readonly [string, string]): boolean => path.endsWith('.js');
    expect(differing.filter((one) => !isScript(one)).map(([path]) => path)).toEqual([]);
    expect(pages.get('procedures/replace-cup/index.html')).toContain('Replace the cup leather');
  });

  test('explain reads the pages of the rules', async () => {
    const { code, out } = await there.node([command, 'explain', 'left-out']);
    expect({ code, isPage: out.includes('## Good') }).toEqual({ code: 0, isPage: true });
  });

  test('--version is that of the package', async () => {
    const { out } = await there.node([command, '--version']);
    expect(out.trim()).toBe(about.version);
  });

  test('an older Node is refused in words, before anything is loaded', async () => {
    const least = minVersion(about.engines.node);
    if (least === null) throw new Error('engines.node says nothing.');
    const as = (version: string): string[] => [
      '--import',
      `data:text/javascript,Object.defineProperty(process.versions,'node',{value:'${version}'})`,
      command,
      '--version',
    ];
    for (const old of ['20.20.2', '18.0.0', `${least.major}.${least.minor - 1}.9`]) {
      const { code, out, err } = await there.node(as(old));
      expect({ code, out }).toEqual({ code: 2, out: '' });
      expect(err).toContain(
        `it needs Node ${least.major}.${least.minor} or newer, and this is Node ${old} (`,
      );
      expect(err.trim().split('\n')).toHaveLength(2);
    }
    expect(await there.node(as(`${least}`))).toMatchObject({ code: 0 });
  });
});

describe('what programs import', () => {
  const modules = Object.keys(about.exports).filter((path) => !/\.(json|css)$/.test(path));

  test('is there under every name that the package gives', async () => {
    const script = modules
      .map((path) => {
        const name = path.replace(/^\./, 'tallybolt');
        return `console.log('${path}', Object.keys(await import('${name}')).sort().join());`;
      })
      .join('\n');
    await there.write({ 'names.mjs': script });
    const { out, err } = await there.node(['names.mjs']);
    expect({ err, names: out.trim().split('\n') }).toEqual({
      err: '',
      names: [
        '. applyEdits,inspect,reportAsMarkdown,reportAsText,reportSchema,summaryAsText',
        './folder CannotRun,readManual',
        './remark default',
        './astro default',
      ],
    });
  });

  test('files beside them are found by their names', async () => {
    const names = [
      'schemas/report.schema.json',
      'schemas/machine.schema.json',
      'sheet.css',
      'package.json',
    ];
    await there.write({
      'files.mjs': `import { readFileSync } from 'node:fs';
for (const name of ${JSON.stringify(names)})
  console.log(readFileSync(new URL(import.meta.resolve('tallybolt/' + name)), 'utf8').length > 100);`,
    });
    expect(await there.node(['files.mjs'])).toMatchObject({ code: 0, out: 'true\n'.repeat(4) });
  });

  test.for(['tallybolt', 'tallybolt/remark'])(
    '%s needs no file and no process: it runs in a browser',
    async (name) => {
      const { outputFiles, errors } = await build({
        stdin: { contents: `export * from '${name}';`, resolveDir: there.folder },
        bundle: true,
        platform: 'browser',
        format: 'esm',
        write: false,
        logLevel: 'silent',
      });
      expect(errors).toEqual([]);
      expect(outputFiles[0]?.text).not.toMatch(/from "node:|require\("/);
    },
  );

  const strict: ts.CompilerOptions = {
    strict: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    types: [],
  };
  const nodeNext: ts.CompilerOptions = {
    ...strict,
    module: ts.ModuleKind.NodeNext,
    moduleResolution: ts.ModuleResolutionKind.NodeNext,
  };
  const bundler: ts.CompilerOptions = {
    ...strict,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
  };

  test.for([
    { name: 'nodenext', options: nodeNext },
    { name: 'bundler', options: bundler },
  ])('types stand up to --strict with $name', { timeout: 180_000 }, async ({ options }) => {
    const count = examples.find(({ name }) => name === 'count.ts')?.source ?? '';
    expect(count).toContain("from 'tallybolt'");
    await there.write({ 'typed.ts': typed, 'count.ts': count });
    expect(complaints(['typed.ts', 'count.ts'], { ...options, skipLibCheck: false })).toEqual([]);
  });

  test('types of the Astro integration stand up to --strict', { timeout: 180_000 }, async () => {
    await there.write({ 'typed-astro.ts': typedAstro });
    // Declarations of Astro and of what it brings are not ours to check.
    expect(complaints(['typed-astro.ts'], { ...nodeNext, skipLibCheck: true })).toEqual([]);
  });

  function complaints(files: readonly string[], options: ts.CompilerOptions): string[] {
    const program = ts.createProgram(
      files.map((file) => join(there.folder, file)),
      options,
    );
    return ts
      .getPreEmitDiagnostics(program)
      .map(
        ({ file: at, messageText }) =>
          `${at?.fileName}: ${ts.flattenDiagnosticMessageText(messageText, ' ')}`,
      );
  }

  const typed = `
import { applyEdits, inspect, reportAsText, reportSchema, type Finding, type GivenFiles, type Report } from 'tallybolt';
import { CannotRun, readManual } from 'tallybolt/folder';
import procedure, { type ProcedureOptions } from 'tallybolt/remark';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { VFile } from 'vfile';

const files: GivenFiles = { texts: [{ path: 'manual.yaml', text: 'title: T' }] };
export const report: Report = inspect(files, { today: '2027-03-31' });
export const other: Report = reportSchema.parse(JSON.parse('{}'));
export const words: string = reportAsText(report, () => '');
export const read: Promise<Report> = readManual('pump').then((manual) => inspect(manual));
export const found: readonly Finding[] | undefined = new VFile('').data.tallybolt?.findings;
export const advice = (error: unknown): string | undefined => error instanceof CannotRun ? error.advice : undefined;
const options: ProcedureOptions = { manual: files, published: '/procedures/' };
export const processor = unified().use(remarkParse).use(procedure, options).use(procedure);
export const edited: string[] = report.findings.map(({ fix }) => applyEdits('', fix?.edits ?? []));
// @ts-expect-error A path is a text.
inspect({ texts: [{ path: 1, text: '' }] });
// @ts-expect-error A level is one of three.
export const level: Finding['level'] = 'fatal';
// @ts-expect-error There is no such option.
unified().use(procedure, { sheets: true });
`;
  const typedAstro = `
import { defineConfig } from 'astro/config';
import tallybolt from 'tallybolt/astro';
export default defineConfig({ integrations: [tallybolt({ manual: 'pump', at: '/procedures' })] });
// @ts-expect-error The folder of the manual is wanted.
tallybolt({});
`;
});

describe('examples of the guide', () => {
  const programs = examples.filter(({ prints }) => prints !== undefined);

  test('there are some', () => {
    expect(programs.map(({ name }) => name)).toEqual(['check.mjs', 'mend.mjs', 'sheet.mjs']);
    expect(examples.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['astro.config.mjs', 'count.ts']),
    );
  });

  beforeAll(async () => {
    await link('remark-rehype', join(there.folder, 'node_modules'));
  });

  test.for(programs)('$name prints what it says', async ({ name, source, prints }) => {
    await there.write({ [name]: source });
    const { out, err } = await there.node([name]);
    expect({ out, err }).toEqual({ out: prints, err: '' });
  });

  describe('in a fresh Astro project', () => {
    const config = examples.find(({ name }) => name === 'astro.config.mjs')?.source ?? '';
    const astro = [join(root, 'node_modules/astro/bin/astro.mjs'), 'build'];
    const page = '<html lang="en"><body><a href="/procedures/">Procedures</a></body></html>\n';
    const project = (pumpFiles: Readonly<Record<string, string>>): Record<string, string> => ({
      'own/package.json': '{ "type": "module" }',
      'own/astro.config.mjs': config,
      'own/src/pages/index.astro': page,
      ...Object.fromEntries(
        Object.entries(pumpFiles).map(([path, text]) => [path.replace(/^\w+/, 'own/pump'), text]),
      ),
    });

    test('an error in the manual fails the build with the report', async () => {
      await there.write(project(pump));
      const { code, out, err } = await there.node(astro, 'own');
      expect(code).toBe(1);
      const told = `${out}${err}`;
      expect(told).toContain('4 of 8 cover bolts are still out at the end');
      expect(told).toContain('Mend what is marked');
      expect(told).not.toMatch(/^ +at /m);
      expect(filesBelow(join(there.folder, 'own'))).not.toContain('dist/index.html');
    });

    test('a manual that balances stands beside the pages of the site', async () => {
      await there.write(project(balanced));
      const { code, out, err } = await there.node(astro, 'own');
      expect({ code, told: `${out}${err}` }).toEqual({
        code: 0,
        told: expect.stringContaining('The manual stands at /procedures/'),
      });
      const files = textsBelow(join(there.folder, 'own/dist'));
      expect(files.get('index.html')).toContain('href="/procedures/"');
      expect(files.get('procedures/procedures/replace-cup/index.html')).toContain('8 cover bolts');
    });
  });
});

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => !name.includes('node_modules') && statSync(join(folder, name)).isFile())
    .map((name) => relative(folder, join(folder, name)).replaceAll('\\', '/'))
    .sort();
}

function textsBelow(folder: string): Map<string, string> {
  return new Map(
    filesBelow(folder).map((path) => [path, readFileSync(join(folder, path), 'latin1')]),
  );
}

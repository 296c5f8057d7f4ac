import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/** In the order in which data flows: a room imports only rooms before it. */
const pureRooms = [
  'source',
  'quantity',
  'joint',
  'mixture',
  'applicability',
  'catalogue',
  'syntax',
  'link',
  'ledger',
  'reverse',
  'rules',
  'derive',
  'report',
  'render',
  'redline',
  'dita',
  'scaffold',
  'adopt',
];
const rooms = [...pureRooms, 'astro', 'editor', 'command', 'library'];

/** What the pure rooms and the schemas may take from npm. None of it reads files, a clock or the network. */
const purePackages = [
  '@dagrejs/dagre',
  '@noble/hashes/sha2.js',
  '@noble/hashes/utils.js',
  'damerau-levenshtein',
  'diff',
  'github-slugger',
  'hast',
  'hastscript',
  'mdast',
  'mdast-util-directive',
  'mdast-util-from-markdown',
  'mdast-util-gfm',
  'mdast-util-gfm-autolink-literal',
  'mdast-util-gfm-footnote',
  'mdast-util-gfm-strikethrough',
  'mdast-util-gfm-table',
  'mdast-util-gfm-task-list-item',
  'mdast-util-to-hast',
  'mdast-util-to-markdown',
  'mdast-util-to-string',
  'micromark-extension-gfm-autolink-literal',
  'micromark-extension-gfm-footnote',
  'micromark-extension-gfm-strikethrough',
  'micromark-extension-gfm-table',
  'micromark-extension-gfm-task-list-item',
  'minisearch',
  'rehype-stringify',
  'remark-directive',
  'remark-frontmatter',
  'remark-gfm',
  'remark-parse',
  'sarif',
  'string-width',
  'unified',
  'unist',
  'unist-util-visit',
  'uqr',
  'yaml',
  'zod',
];

/** What makes a result depend on the time, the place, chance, or the machine that it runs on. */
const unsteady = [
  /\bDate\b/,
  /\bMath\.random\b/,
  /\.toLocale\w+/,
  /\.localeCompare\b/,
  /\bIntl\b/,
  /\bperformance\b/,
  /\bcrypto\b/,
  /\bfetch\b/,
  /\bset(Timeout|Interval|Immediate)\b/,
  /\bprocess\b/,
  /\bconsole\b/,
  /\bglobalThis\b/,
  /\bimport\.meta\b/,
];

interface SourceFile {
  /** From the root of the project, with `/`. */
  readonly path: string;
  readonly room: string;
  /** Without comments, strings and regular expressions. */
  readonly code: string;
  readonly imports: readonly Import[];
}

interface Import {
  readonly wanted: string;
  /** Path from the root of the project, of an import of our own. */
  readonly file: string | undefined;
}

const files = [...sourcesBelow('src'), ...sourcesBelow('schemas')];
const isPure = ({ room }: SourceFile): boolean => room === 'schemas' || pureRooms.includes(room);
const pure = files.filter(isPure);

test('every room below src is in the order of the rooms, and every room has files', () => {
  const found = new Set(files.map(({ room }) => room));
  expect([...found].sort()).toEqual([...rooms, 'schemas'].sort());
});

test('an import of our own leads to a file that is there', () => {
  const broken = files.flatMap(({ path, imports }) =>
    imports
      .filter(({ file }) => file !== undefined && !existsSync(join(root, file)))
      .map(({ wanted }) => `${path}: ${wanted}`),
  );
  expect(broken).toEqual([]);
});

test('a room imports only rooms before it, and schemas import only schemas', () => {
  expect(
    crossings()
      .filter(({ from, to }) => !mayImport(from, to.room))
      .map(tell),
  ).toEqual([]);
});

test('a room is entered by its index.ts', () => {
  const aside = crossings().filter(
    ({ to }) => rooms.includes(to.room) && to.path !== `src/${to.room}/index.ts`,
  );
  expect(aside.map(tell)).toEqual([]);
});

test('the pure rooms take nothing from npm but what is pure', () => {
  const foreign = pure.flatMap(({ path, imports }) =>
    imports
      .filter(({ file, wanted }) => file === undefined && !purePackages.includes(wanted))
      .map(({ wanted }) => `${path}: ${wanted}`),
  );
  expect(foreign).toEqual([]);
});

test('nothing in the pure rooms knows a clock, chance, a locale, the process or the network', () => {
  const found = pure.flatMap(({ path, code }) =>
    unsteady.filter((one) => one.test(code)).map((one) => `${path}: ${one.source}`),
  );
  expect(found).toEqual([]);
});

test('in the editor room only the server and what reads the disk know the system', () => {
  const found = files
    .filter(({ room, imports }) => room === 'editor' && imports.some(isOfSystem))
    .map(({ path }) => path.replace('src/editor/', ''));
  expect(found).toEqual(['file-address.ts', 'serve-editor.ts', 'workbench.ts']);
});

const isOfSystem = ({ wanted }: Import): boolean => wanted.startsWith('node:');

test('index.ts files only re-export', () => {
  const more = files
    .filter(({ path }) => path.endsWith('/index.ts'))
    .filter(({ code }) =>
      code.split(';').some((one) => !/^\s*(export\b[^=]*\bfrom\b\s*"")?\s*$/.test(one)),
    );
  expect(more.map(({ path }) => path)).toEqual([]);
});

/**
 * Blocks nest in steps and steps in blocks, and words in words: the functions that read them call each other.
 * Nothing of them runs while the files load.
 */
const nested = [
  [
    'src/syntax/block-directive.ts',
    'src/syntax/blocks.ts',
    'src/syntax/branch.ts',
    'src/syntax/figure.ts',
    'src/syntax/guarded.ts',
    'src/syntax/repeat.ts',
    'src/syntax/steps.ts',
  ],
  ['src/syntax/phrasing.ts', 'src/syntax/text-directive.ts'],
];

test('no file imports itself over others, but for readers of what nests', () => {
  const found = loops(importsByFile(files)).map((group) => group.join());
  expect(found.sort()).toEqual(nested.map((group) => group.join()).sort());
});

describe('the reader of imports', () => {
  const read = (text: string): string[] =>
    importsOf('src/a/b.ts', text).map(({ wanted }) => wanted);

  test('finds each way to import', () => {
    expect(
      read(`import a from 'a'; import type { B } from './b.ts'; import 'c'; export * from "d";
        export { e } from 'e'; const f = await import('f'); type G = import('g').G;`),
    ).toEqual(['a', './b.ts', 'c', 'd', 'e', 'f', 'g']);
  });

  test('passes over comments and strings', () => {
    expect(read(`// import 'a'\nconst b = "import 'c'"; /* export * from 'd' */`)).toEqual([]);
    expect(
      codeOf(`const a = 'Date'; // Date\nconst b = /Date/; const c = \`Date \${Date}\`;`),
    ).toMatch(/^[^D]*\$\{Date\}[^D]*$/);
  });

  test('finds a loop over three files, one over itself, and no other', () => {
    const graph = new Map([
      ['a', ['b']],
      ['b', ['c', 'd']],
      ['c', ['a']],
      ['d', ['e']],
      ['e', []],
      ['f', ['f']],
    ]);
    expect(loops(graph)).toEqual([['a', 'b', 'c'], ['f']]);
  });
});

interface Crossing {
  readonly from: SourceFile;
  readonly to: { readonly path: string; readonly room: string };
}

/** Imports of our own that lead from one room into another. */
function crossings(): Crossing[] {
  return files.flatMap((from) =>
    from.imports.flatMap(({ file }) => {
      if (file === undefined) return [];
      const to = { path: file, room: roomOf(file) };
      return to.room === from.room ? [] : [{ from, to }];
    }),
  );
}

const tell = ({ from, to }: Crossing): string => `${from.path} imports ${to.path}`;

function mayImport({ room }: SourceFile, other: string): boolean {
  if (other === 'schemas') return true;
  // The library tells its own version, as the command does.
  if (other === 'package.json') return room === 'library';
  return room !== 'schemas' && rooms.includes(other) && rooms.indexOf(other) < rooms.indexOf(room);
}

function sourcesBelow(folder: string): SourceFile[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.endsWith('.d.ts'))
    .map((name) => {
      const path = relative(root, join(root, folder, name)).replaceAll('\\', '/');
      const text = readFileSync(join(root, path), 'utf8');
      return { path, room: roomOf(path), code: codeOf(text), imports: importsOf(path, text) };
    })
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** `schemas`, the folder below `src`, or the name of the file where it stands in neither. */
function roomOf(path: string): string {
  const [top = '', below = ''] = path.split('/');
  return top === 'src' ? below : top;
}

function importsOf(path: string, text: string): Import[] {
  const found: Import[] = [];
  const add = (node: ts.Node | undefined): void => {
    if (node === undefined || !ts.isStringLiteral(node)) return;
    const own = node.text.startsWith('.');
    const file = own
      ? relative(root, resolve(root, dirname(path), node.text)).replaceAll('\\', '/')
      : undefined;
    found.push({ wanted: node.text, file });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) add(node.moduleSpecifier);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      add(node.argument.literal);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      add(node.arguments[0]);
    }
    ts.forEachChild(node, visit);
  };
  visit(parsed(text));
  return found;
}

/** A text without its comments, and with nothing in its strings and regular expressions. */
function codeOf(text: string): string {
  const tree = parsed(text);
  const words: string[] = [];
  const visit = (node: ts.Node): void => {
    if (node.getChildCount(tree) === 0) words.push(wordOf(node));
    else for (const child of node.getChildren(tree)) visit(child);
  };
  const wordOf = (node: ts.Node): string => {
    if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return '""';
    if (ts.isRegularExpressionLiteral(node)) return '//';
    if (ts.isTemplateHead(node)) return '${';
    if (ts.isTemplateMiddle(node)) return '}${';
    if (ts.isTemplateTail(node)) return '}';
    return ts.isJSDoc(node) ? '' : node.getText(tree);
  };
  visit(tree);
  return words.reduce(
    (code, word) => code + (/\w$/.test(code) && /^\w/.test(word) ? ' ' : '') + word,
    '',
  );
}

function parsed(text: string): ts.SourceFile {
  return ts.createSourceFile('file.ts', text, ts.ScriptTarget.Latest, false);
}

/** What each file imports of ours, types too. */
function importsByFile(all: readonly SourceFile[]): ReadonlyMap<string, readonly string[]> {
  return new Map(
    all.map(({ path, imports }) => [
      path,
      imports.flatMap(({ file }) => (file === undefined ? [] : [file])),
    ]),
  );
}

/** Groups of files that reach each other (Tarjan 1972), each sorted; files that stand alone are left out. */
function loops(graph: ReadonlyMap<string, readonly string[]>): string[][] {
  const index = new Map<string, number>();
  const stack: string[] = [];
  const found: string[][] = [];
  const visit = (node: string): number => {
    const mine = index.size;
    let lowest = mine;
    index.set(node, mine);
    stack.push(node);
    for (const next of graph.get(node) ?? []) {
      const seen = index.get(next);
      if (seen === undefined) lowest = Math.min(lowest, visit(next));
      else if (stack.includes(next)) lowest = Math.min(lowest, seen);
    }
    if (lowest === mine) {
      const group = stack.splice(stack.indexOf(node));
      if (group.length > 1 || graph.get(node)?.includes(node)) found.push(group.sort());
    }
    return lowest;
  };
  for (const node of graph.keys()) if (!index.has(node)) visit(node);
  return found;
}

import type { FuzzInput } from './fuzz-input.ts';

/** A manual that was made to break programs. Its text is made when it is asked for: some have megabytes. */
export interface NastyManual {
  readonly name: string;
  readonly input: () => FuzzInput;
}

/** Large, deep, many, or odd: one manual for each thing that could make a program hang, swell or stop. */
export function nastyManuals(): readonly NastyManual[] {
  return [...inYaml, ...inMarkdown, ...inVariants, ...inCatalogue, ...inGraph];
}

/** Those that take a second or less each: the tests try them, `npm run fuzz -- --nasty` all. */
export const quickNames: readonly string[] = [
  'aliases of aliases',
  'aliases of aliases as entries',
  'aliases of aliases in front matter',
  'an alias of itself',
  'merge keys',
  'brackets in brackets',
  'maps in maps',
  'lists in a line',
  'a line of 5 MB',
  '5 MB in quotes',
  '100,000 comments',
  'halves of characters',
  'NUL and escapes',
  'names of every object',
  'front matter that never ends',
  'a byte order mark and old line ends',
  'NUL',
  'a list 10,000 deep',
  'a list 10,000 deep by indentation',
  'quotations 10,000 deep',
  'brackets 10,000 deep',
  'pictures in pictures',
  'a word of 5 MB',
  'a word of 400 KB',
  'a number of 400 KB',
  'marks of direction',
  'accents on one letter',
  '100,000 directives',
  'repeats of repeats',
  'qty 999999',
  'spaces',
  'a table of 500 columns',
  'addresses',
  'underscores',
  'backticks of every length',
  'words of work',
  'blanks at the ends of lines',
  'an attribute of 400 KB',
  'brackets in a condition',
  'denials in a condition',
];

const many = (count: number, piece: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => piece(i)).join('');

const title = 'title: T\n';
const front = '---\nprocedure: a\ntitle: A\n---\n\n';
const withItems = `---
procedure: a
title: A
items:
  fasteners: { bolt: { name: bolt, count: 8, torque: 45 N·m } }
  parts: { cover: { name: cover }, cup: { name: cup, behind: cover } }
---

`;

const nasty =
  (texts: (text: string) => Readonly<Record<string, string>>) =>
  (name: string, text: () => string): NastyManual => ({
    name,
    input: () => ({ kind: 'manual', texts: texts(text()), isShown: true }),
  });
const settings = nasty((text) => ({
  'manual.yaml': text,
  'procedures/a.md': `${front}1. Wait.\n`,
}));
const machine = nasty((text) => ({
  'manual.yaml': title,
  'machines/m.yaml': `machine: m\nname: M\n${text}`,
  'procedures/a.md': '---\nprocedure: a\ntitle: A\nmachine: m\n---\n\n1. Wait.\n',
}));
const body = nasty((text) => ({ 'manual.yaml': title, 'procedures/a.md': withItems + text }));
const page = nasty((text) => ({ 'manual.yaml': title, 'procedures/a.md': text }));

const bomb = (levels: number): string =>
  `a0: &a0 [${'x, '.repeat(9)}x]\n${many(levels, (i) => `a${i + 1}: &a${i + 1} [${`*a${i}, `.repeat(9)}*a${i}]\n`)}`;

const inYaml: readonly NastyManual[] = [
  settings('aliases of aliases', () => `${title}${bomb(12)}`),
  machine('aliases of aliases as entries', () => `${bomb(12)}parts: *a12\n`),
  page(
    'aliases of aliases in front matter',
    () => `---\nprocedure: a\ntitle: A\n${bomb(12)}items: *a12\n---\n\n1. Wait.\n`,
  ),
  settings('an alias of itself', () => 'title: &a [*a]\nunits: &u { torque: *u }\n'),
  settings('100,000 aliases', () => `title: &t T\nnever:\n${'  - *t\n'.repeat(100_000)}`),
  settings('merge keys', () => `x: &x { title: T }\n<<: [${'*x, '.repeat(1000)}*x]\n`),
  settings('brackets in brackets', () => `title: ${'['.repeat(10_000)}`),
  settings('maps in maps', () => many(3_000, (i) => `${' '.repeat(i)}a:\n`)),
  settings('lists in a line', () => `never: ${'- '.repeat(10_000)}\n`),
  settings('a line of 5 MB', () => `title: ${'word '.repeat(1_000_000)}\n`),
  settings('5 MB in quotes', () => `title: "${'\\x41'.repeat(1_200_000)}"\n`),
  settings('one key 100,000 times', () => 'title: T\n'.repeat(100_000)),
  settings('100,000 keys', () => title + many(100_000, (i) => `k${i}: x\n`)),
  settings('100,000 documents', () => '---\ntitle: T\n'.repeat(100_000)),
  settings('tabs', () => '\ttitle: T\n'.repeat(20_000)),
  settings('100,000 comments', () => `${'# x\n'.repeat(100_000)}title: T\n`),
  settings(
    'halves of characters',
    () => 'title: "\\ud800"\npublisher: "\\udc00x"\naddress: "https://x.example/\\ud800"\n',
  ),
  settings(
    'NUL and escapes',
    () => 'title: "\\0\\e[2J"\npublisher: "\\u202eabc"\nedition: "\\u2028"\n',
  ),
  settings(
    'names of every object',
    () =>
      `${title}__proto__: { title: X }\nconstructor: x\nrules: { __proto__: error, toString: off }\n`,
  ),
  page('front matter that never ends', () => `---\n${'a: b\n'.repeat(50_000)}`),
  page(
    'a byte order mark and old line ends',
    () => `\ufeff${front.replaceAll('\n', '\r')}1. Wait.\r`,
  ),
  page('NUL', () => `${front}1. \0\n`.repeat(50)),
];

const inMarkdown: readonly NastyManual[] = [
  body('a list 10,000 deep', () => '- '.repeat(10_000)),
  body('a list 10,000 deep by indentation', () => many(2_000, (i) => `${'  '.repeat(i)}- a\n`)),
  body('quotations 10,000 deep', () => '>'.repeat(10_000)),
  body('brackets 10,000 deep', () => `${'['.repeat(10_000)}x${']'.repeat(10_000)}`),
  body('pictures in pictures', () => `${'!['.repeat(2_000)}x${'](a)'.repeat(2_000)}`),
  body('a line of 5 MB', () => `1. ${'word '.repeat(1_000_000)}\n`),
  body('a word of 5 MB', () => `1. ${'x'.repeat(5_000_000)}\n`),
  body('a word of 400 KB', () => `1. ${'x'.repeat(400_000)}\n`),
  body('a number of 400 KB', () => `1. Torque to ${'9'.repeat(400_000)} N·m\n`),
  body('marks of direction', () => `1. ${'\u202e'.repeat(100_000)}\n`),
  body('accents on one letter', () => `1. a${'\u0301'.repeat(300_000)}\n`),
  body('halves of characters', () => '1. \ud800 \udc00 :remove[\ud800]{item="\udc00"}\n'),
  body('100,000 directives', () => ':check{item=bolt}\n\n'.repeat(100_000)),
  body(
    '20,000 directives in few lines',
    () => `${many(100, (i) => `${i + 1}. ${':check{item=cup} '.repeat(180)}\n\n`)}`,
  ),
  body('1,600 steps that undo each other', () =>
    many(800, (i) => `${2 * i + 1}. :remove{item=cover}\n\n${2 * i + 2}. :install{item=cover}\n\n`),
  ),
  body('1,600 steps that need each other', () =>
    many(1_600, (i) => `${i + 1}. Wait.\n   ::step{#s${i} needs=s${(i + 1) % 1_600}}\n\n`),
  ),
  body('20 branches that each take one more of the same bolts', () =>
    many(20, (i) => `:::if[${i}]\n:remove{item=bolt qty=1}\n:::\n\n`),
  ),
  body('ways through ways', () =>
    many(
      12,
      (i) =>
        `:::either[a${i}]\n:remove{item=bolt qty=1}\n:::\n:::or[b${i}]\n:install{item=bolt qty=1}\n:::\n\n`,
    ),
  ),
  body(
    'a thousand reverses',
    () => `## Removal\n\n1. :remove{item=cover}\n\n${'::reverse{of=removal}\n\n'.repeat(1_000)}`,
  ),
  body('headings of one name', () => '## Removal\n\n'.repeat(2_400)),
  body('repeats of repeats', () =>
    many(20, (i) => `${':'.repeat(40 - i)}repeat[until dry]\n\n1. :remove{item=cover}\n\n`),
  ),
  body('qty 999999', () => '1. :remove{item=bolt qty=999999}\n2. :install{item=bolt qty=999999}\n'),
  body('a table of 500 columns', () => `|${'a|'.repeat(500)}\n|${'-|'.repeat(500)}\n`.repeat(4)),
  body('references without a target', () => many(1_500, (i) => `[a${i}]: x\n[a${i}][b${i}]\n\n`)),
  body('footnotes of footnotes', () => many(1_000, (i) => `[^${i}]: [^${i + 1}]\n\n`)),
  body('addresses', () => 'www.a.'.repeat(60_000)),
  body('mail addresses', () => 'a@a.'.repeat(100_000)),
  body('underscores', () => 'a_'.repeat(900)),
  body('backticks of every length', () => many(600, (i) => `${'`'.repeat(i)} `)),
  body('words of work', () => 'remove '.repeat(60_000)),
  body('spaces', () => `1. Remove${' '.repeat(400_000)}the bolt.\n`),
  body('blanks at the ends of lines', () => `1. a${' '.repeat(4_000)}\n`.repeat(90)),
  body('quantities', () => '1..2 N·m (3 lbf·ft) '.repeat(20_000)),
  body('an attribute of 400 KB', () => `1. :remove{item=bolt when="${'a & '.repeat(100_000)}a"}\n`),
  body('50,000 attributes', () => `1. :remove{${'item=bolt '.repeat(45_000)}}\n`),
  body('brackets in a condition', () => `1. :remove{item=bolt when="${'('.repeat(100_000)}"}\n`),
  body('denials in a condition', () => `1. :remove{item=bolt when="${'!'.repeat(100_000)}a"}\n`),
];

const inVariants: readonly NastyManual[] = [
  settings(
    '100,000 values',
    () => `${title}variants:\n  v: { values: [${many(100_000, (i) => `v${i}, `)}w] }\n`,
  ),
  settings(
    '20,000 attributes',
    () => `${title}variants:\n${many(20_000, (i) => `  v${i}: [a, b]\n`)}`,
  ),
  nasty((text) => ({
    'manual.yaml': `${title}variants:\n${many(200, (i) => `  v${i}: [a, b]\n`)}`,
    'procedures/a.md': withItems + text,
  }))('200 attributes, each on its own bolt', () =>
    many(200, (i) => `1. :remove{item=bolt qty=1 when="v${i} = a"}\n\n`),
  ),
  nasty((text) => ({
    'manual.yaml': `${title}variants:\n${many(40, (i) => `  v${i}: [a, b]\n`)}never:\n${text}`,
    'procedures/a.md': `${withItems}1. :remove{item=bolt}\n`,
  }))('hard rules of what never is', () =>
    many(
      400,
      (i) => `  - v${(i * 7) % 40} = a & v${(i * 13 + 1) % 40} = b & v${(i * 29 + 2) % 40} = a\n`,
    ),
  ),
  nasty((text) => ({
    'manual.yaml': `${title}variants:\n${many(30, (i) => `  x${i}: [a, b]\n`)}${many(30, (i) => `  y${i}: [a, b]\n`)}`,
    'procedures/a.md': withItems + text,
  }))(
    'a condition that swells in any order',
    () =>
      `1. :remove{item=bolt when="${Array.from({ length: 30 }, (_, i) => `(x${i} = a & y${i} = a)`).join(' | ')}"}\n`,
  ),
];

const inCatalogue: readonly NastyManual[] = [
  machine(
    'a count of 1e9',
    () =>
      'fasteners:\n  b: { name: b, count: 1e9, thread: M10, torque: 45 N·m, pattern: circle }\n',
  ),
  machine(
    'a count of 999999 in a circle',
    () =>
      'fasteners:\n  b: { name: b, count: 999999, thread: M10, torque: 45 N·m, pattern: circle }\n',
  ),
  machine(
    'a grid of 9999 by 9999',
    () =>
      'fasteners:\n  b: { name: b, count: 99980001, torque: 45 N·m, pattern: { rows: 9999, columns: 9999 } }\n',
  ),
  machine(
    '20,000 entries',
    () => `parts:\n${many(20_000, (i) => `  p${i}: { name: part ${i}, behind: p${i + 1} }\n`)}`,
  ),
  machine(
    '5,000 parts in a ring',
    () => `parts:\n${many(5_000, (i) => `  p${i}: { name: part, behind: p${(i + 1) % 5_000} }\n`)}`,
  ),
  machine(
    'a part behind 20,000',
    () =>
      `parts:\n${many(5_000, (i) => `  p${i}: { name: part }\n`)}  all: { name: all, behind: [${many(5_000, (i) => `p${i}, `)}p1] }\n`,
  ),
  machine(
    '5,000 instances',
    () => `parts:\n  p: { name: part, each: [${many(5_000, (i) => `i${i}, `)}x] }\n`,
  ),
  machine(
    '10,000 stages',
    () => `fasteners:\n  b: { name: b, torque: [${'1 N·m, '.repeat(10_000)}2 N·m] }\n`,
  ),
  machine(
    'threads of 100,000 digits',
    () =>
      `fasteners:\n  b: { name: b, thread: M${'9'.repeat(100_000)}, torque: ${'9'.repeat(100_000)} N·m }\n`,
  ),
  machine(
    'capacity of 1e300',
    () =>
      'circuits:\n  c: { name: c, fluid: oil, capacity: 1e300 L, mix: 0.0000001 % a + 99 % b }\n',
  ),
];

const inGraph: readonly NastyManual[] = [
  {
    name: '500 procedures that perform the next',
    input: () => ({
      kind: 'manual',
      isShown: true,
      texts: performing(500, (i) => `1. ::perform{procedure=p${i + 1}}\n`),
    }),
  },
  {
    name: '30 procedures that each perform the next twice',
    input: () => ({
      kind: 'manual',
      isShown: true,
      texts: performing(
        30,
        (i) => `1. ::perform{procedure=p${i + 1}}\n2. ::perform{procedure=p${i + 1}}\n`,
      ),
    }),
  },
  {
    name: '30 procedures that each write out the next twice',
    input: () => ({
      kind: 'manual',
      isShown: true,
      texts: performing(
        30,
        (i) =>
          `1. ::perform{procedure=p${i + 1} in-place}\n2. ::perform{procedure=p${i + 1} in-place}\n`,
      ),
    }),
  },
  {
    name: 'a ring of 300',
    input: () => ({
      kind: 'manual',
      isShown: true,
      texts: performing(300, (i) => `1. ::perform{procedure=p${(i + 1) % 300}}\n`),
    }),
  },
];

function performing(count: number, body: (i: number) => string): Record<string, string> {
  return Object.fromEntries([
    ['manual.yaml', title],
    ...Array.from({ length: count }, (_, i) => [
      `procedures/p${i}.md`,
      `---\nprocedure: p${i}\ntitle: Job ${i}\n---\n\n${i === count - 1 ? '1. :check{item=x}\n' : body(i)}`,
    ]),
  ]);
}

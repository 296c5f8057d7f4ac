import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { outlineOf, outlineOfFront } from '../../src/link/index.ts';
import { isProcedureFile, type TextFile } from '../../src/source/index.ts';
import { parseFront, parseProcedure } from '../../src/syntax/index.ts';
import { generate } from '../bench/generate.ts';
import { changedText } from '../fuzz/changed-text.ts';

const manuals = ['content', 'tests/manuals/hand-pump', 'tests/manuals/lathe'];
const files = (await Promise.all(manuals.map((folder) => readManualFiles(folder))))
  .flatMap(({ texts }) => texts)
  .concat(generate(1, { machines: 1, jobs: 2, slips: 0 }).files.texts)
  .filter(({ path }) => isProcedureFile(path));

/** All that other procedures may ask of the front matter, read alone and with the rest. */
function expectSame(file: TextFile): void {
  const { value } = parseProcedure(file);
  const front = parseFront(file);
  expect(front && { front: front.front, outline: outlineOfFront(front) }).toEqual(
    value && {
      front: value.front,
      outline: { ...outlineOf(value), anchors: [], performs: [], linksTo: [], figures: [] },
    },
  );
}

const text = (front: string, rest = '\n1. Look.\n'): string => `---\n${front}---\n${rest}`;
const sound = 'procedure: one\ntitle: One\n';

describe('the front matter read alone says what it says in the whole text', () => {
  it('of every procedure of three manuals', () => {
    expect(files.length).toBeGreaterThan(50);
    for (const file of files) expectSame(file);
  });

  it.for([
    ['nothing', ''],
    ['no fence', 'procedure: one\n'],
    ['no closing fence', `---\n${sound}\n1. Look.\n`],
    ['nothing between the fences', '---\n---\n'],
    ['a fence and nothing else', '---'],
    ['four dashes', `----\n${sound}----\n`],
    ['a fence that is indented', ` ---\n${sound}---\n`],
    ['a closing fence that is indented', `---\n${sound} ---\n---\n`],
    ['a closing fence of four dashes', `---\n${sound}----\n---\n`],
    ['spaces and tabs after the fences', `--- \t\n${sound}---\t \n1. Look.\n`],
    ['the end of the file at the closing fence', `---\n${sound}---`],
    ['Windows line ends', text(sound).replaceAll('\n', '\r\n')],
    ['old line ends', text(sound).replaceAll('\n', '\r')],
    ['a byte order mark', `\uFEFF${text(sound)}`],
    ['a line before it', `\n${text(sound)}`],
    ['a fence in a block of text', text(`${sound}summary: |\n  a\n  ---\n  b\n`)],
    ['YAML that breaks off', text(`${sound}starts: { coolant: \n`)],
    ['no id', text('title: One\n')],
    ['an id that is none', text('procedure: One Two\ntitle: One\n')],
    ['a key twice', text(`${sound}procedure: two\n`)],
    ['a key that there is not', text(`${sound}titel: One\n`)],
    [
      'faulty states among sound ones',
      text(`${sound}starts:\n  a: out\n  B b: 3\n  c: { out: x }\n`),
    ],
    ['an alias', text('procedure: &id one\ntitle: *id\n')],
    ['numbers for words', text('procedure: 1\ntitle: 2\nmachine: 3\n')],
    ['too many lines', text(sound, 'x\n\n'.repeat(3000))],
    ['lists too deep', text(sound, `${'> '.repeat(70)}x\n`)],
    ['emphasis too deep', text(sound, `${'*a **b '.repeat(120)}${'b** a*'.repeat(120)}\n`)],
    [
      'emphasis that is just not too deep',
      text(sound, `${'*a **b '.repeat(90)}${'b** a*'.repeat(90)}\n`),
    ],
    ['links in each other', text(sound, `${'[a '.repeat(500)}x${'](b)'.repeat(500)}\n`)],
    ['labels in each other', text(sound, `${':x[a '.repeat(500)}x${']'.repeat(500)}\n`)],
    ['footnotes in each other', text(sound, `${'[^a]: '.repeat(300)}x\n`)],
  ] as const)('with %s', ([, written]) => {
    expectSame({ path: 'procedures/one.md', text: written });
  });

  it('of texts with faults put in', { timeout: 120_000 }, () => {
    const changed = fc.constantFrom(...files).chain((file) => {
      const end = file.text.indexOf('\n---') + 6;
      const head = file.text.slice(0, end);
      // Most changes go to the front matter.
      return fc
        .oneof(
          { weight: 4, arbitrary: changedText(head).map((one) => one + file.text.slice(end)) },
          { weight: 1, arbitrary: changedText(file.text) },
        )
        .map((one) => ({ ...file, text: one }));
    });
    fc.assert(fc.property(changed, expectSame), { numRuns: 400 });
  });
});

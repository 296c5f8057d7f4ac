import { toString as textOf } from 'mdast-util-to-string';
import { describe, expect, test } from 'vitest';
import { allActions } from '../../src/link/index.ts';
import { dataOf, type Read, read } from './carets.ts';

/** All printed words of the text. */
function wordsOf({ procedure }: Read): string {
  const blocks = procedure.sections.flatMap((section) => section.blocks);
  return blocks.map((block) => (block.type === 'prose' ? textOf(block.node) : '')).join('\n');
}

describe('a colon that begins no directive', () => {
  test.each([
    'At 10:30 or 12:30pm',
    'ratio 1:4 by volume',
    'Note:see page 4',
    'a:b and a :b',
    'A face :) or :( or :',
    'Turn it by hand:remove the pin',
    'Step:danger and Rest:if',
    'Note: check: done',
    'from 10:30[sic] on',
    'by 12:45{x}',
    'C::D and std::vector',
    'a :: b ::: c',
  ])('%s', (line) => {
    const result = read(line);
    expect(wordsOf(result)).toBe(line);
    const [block] = result.procedure.sections[0]?.blocks ?? [];
    if (block?.type !== 'prose' || block.node.type !== 'paragraph') throw new Error('no paragraph');
    expect(block.node.children.every(({ type }) => type === 'text')).toBe(true);
  });

  test('in an address', () => {
    const result = read('See http://localhost:4321/a:b and <https://example.org/x:y>.');
    expect(result.procedure.links.map(({ url }) => url)).toEqual([
      'http://localhost:4321/a:b',
      'https://example.org/x:y',
    ]);
  });

  test('escaped or in code', () => {
    expect(wordsOf(read('\\:remove{item=a} and `:remove{item=b}`'))).toBe(
      ':remove{item=a} and :remove{item=b}',
    );
  });
});

describe('a name', () => {
  test('of an action without label and attributes', () => {
    const result = read(`Then :remove it.
     ^^^^^^^ attribute-wrong`);
    expect(wordsOf(result)).toBe('Then :remove it.');
  });

  test('that is unknown keeps its words and the actions in them', () => {
    const result = read(`Then :remvoe[take the :remove[bolt]{item=b} out]{item=a}.
     ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-unknown`);
    expect(dataOf(result)).toEqual({
      kind: 'directive-unknown',
      name: 'remvoe',
      form: 'text',
      near: 'remove',
    });
    expect(wordsOf(result)).toBe('Then take the bolt out.');
    expect([...allActions(result.procedure)].map(({ item }) => item.id)).toEqual(['b']);
  });

  test('that is unknown, of a block and of a line', () => {
    const result = read(`:::dangr{hazard=a}
^^^^^^^^^^^^^^^^^^ directive-unknown
Take :remove{item=a}.
:::

::preform{procedure=a}
^^^^^^^^^^^^^^^^^^^^^^ directive-unknown`);
    expect(result.facts.map((fact) => 'near' in fact && fact.near)).toEqual(['danger', 'perform']);
    expect([...allActions(result.procedure)]).toHaveLength(1);
  });
});

describe('the wrong number of colons', () => {
  test.each([
    [':danger[Hot]{hazard=a}', ':danger', ':::danger before its lines and ::: after them'],
    [':perform{procedure=a}', ':perform', '::perform on a line of its own'],
    [':step{#a}', ':step', '::step on a line of its own'],
    ['::remove[it]{item=a}', '::remove', ':remove in a sentence'],
    ['::danger{hazard=a harm=b}', '::danger', ':::danger before its lines and ::: after them'],
    [
      ':figure{src=a.svg}',
      ':figure',
      '::figure on a line of its own, or :::figure before its lines and ::: after them',
    ],
  ])('%s', (line, found, expected) => {
    const result = read(`${line}
${'^'.repeat(line.length)} directive-misplaced`);
    expect(dataOf(result)).toMatchObject({ found, expected });
  });

  test('too many colons on an action leave it an action', () => {
    const { procedure } = read(`:::remove[it]{item=a}
^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
and :fit{item=b}
:::

::remove[it too]{item=c}
^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced`);
    expect([...allActions(procedure)].map(({ item, words }) => [item.id, words])).toEqual([
      ['a', 'it'],
      ['b', ''],
      ['c', 'it too'],
    ]);
  });

  test(':::perform is understood all the same', () => {
    const { procedure } = read(`:::perform{procedure=make-safe}
^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
:::`);
    expect(procedure.sections[0]?.blocks[0]).toMatchObject({
      type: 'perform',
      procedure: { id: 'make-safe' },
    });
  });
});

describe('what is left as text', () => {
  test.each([
    ['::step{time="10 min}', '^^^^^^', 'attribute-wrong'],
    [':::danger{hazard="a}', '^^^^^^^^^', 'attribute-wrong'],
    [':::when[feed = hydraulic', '^^^^^^^', 'attribute-wrong'],
    ['::preform{procedure="a}', '^^^^^^^^^', 'directive-unknown'],
    ['::: danger', '^^^^^^^^^^', 'directive-misplaced'],
    [':::danger {hazard=a}', '^^^^^^^^^', 'directive-misplaced'],
    ['Then :remove {item=a}.', '     ^^^^^^^^^', 'attribute-wrong'],
    ['Then :remove[it] {item=a}.', '     ^^^^^^^^^^^^^', 'attribute-wrong'],
    ['Then :remove [it]{item=a}.', '     ^^^^^^^^^', 'attribute-wrong'],
    ['::step and more', '^^^^^^', 'directive-misplaced'],
    ['Loosen it. ::step{#a}', '           ^^^^^^', 'directive-misplaced'],
    [':::', '^^^', 'directive-misplaced'],
  ])('%s', (line, carets, kind) => {
    read(`${line}\n${carets} ${kind}`);
  });
});

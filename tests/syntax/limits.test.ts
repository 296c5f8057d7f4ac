import { describe, expect, test } from 'vitest';
import { parseProcedure } from '../../src/syntax/index.ts';
import { frontMatter } from './carets.ts';

function kindsOf(body: string): string[] {
  const { facts } = parseProcedure({ path: 'procedures/a.md', text: `${frontMatter}${body}` });
  return [...new Set(facts.map(({ kind }) => kind))];
}

const repeated = (count: number, line: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => line(i)).join('');

describe('what no sheet can hold is told and not parsed', () => {
  test.each([
    ['lists by markers', '- '.repeat(10_000)],
    ['numbered lists by markers', `${'1. '.repeat(10_000)}a`],
    ['lists by indentation', repeated(500, (i) => `${'  '.repeat(i)}- a\n`)],
    ['numbered lists by indentation', repeated(400, (i) => `${'   '.repeat(i)}1. a\n`)],
    ['lists by tabs', repeated(200, (i) => `${'\t'.repeat(i)}- a\n`)],
    ['quotations', '>'.repeat(100_000)],
    ['blocks', ':::danger\n'.repeat(1_000)],
    ['blocks in a quotation', '> :::danger\n'.repeat(1_000)],
    ['blocks, ever further left', repeated(1_000, (i) => `${' '.repeat(3 - (i % 4))}:::danger\n`)],
    ['rounds within rounds', repeated(6, (i) => `${':'.repeat(9 - i)}repeat[until dry]\n\n`)],
    ['blocks with ever fewer colons', repeated(300, (i) => `${':'.repeat(400 - i)}danger\n\n`)],
  ])('%s nested too deep', (_, body) => {
    expect(kindsOf(body)).toEqual(['too-deep']);
  });

  test.each([
    ['a line of 5 MB', 'word '.repeat(1_000_000)],
    ['100 000 actions', ':remove[x]{item=a}\n\n'.repeat(100_000)],
    ['100 000 empty lines', '\n'.repeat(100_000)],
    ['3000 lines together', 'a\n=\n'.repeat(1_500)],
    ['emphasis', '*a_ '.repeat(20_000)],
    ['asterisks', `${'*'.repeat(10_000)}a${'*'.repeat(10_000)}`],
    ['old line ends', 'a\r=\r'.repeat(1_500)],
    ['opening brackets', '['.repeat(100_000)],
    ['bracket pairs', '[a]('.repeat(20_000)],
    ['times of day', ' 10:30'.repeat(5_100)],
    ['braces', ':a{b="'.repeat(20_000)],
  ])('%s is too large', (_, body) => {
    expect(kindsOf(body)).toEqual(['too-large']);
  });

  test('with what was found and the limit', () => {
    const { facts } = parseProcedure({ path: 'a.md', text: 'a\n'.repeat(2_001) });
    expect(facts).toMatchObject([
      { kind: 'too-large', what: 'lines without an empty line between', found: 2001, limit: 2000 },
    ]);
  });
});

describe('what is large but within the limits is read in bearable time', () => {
  test.each([
    ['steps', repeated(1_600, (i) => `1. :remove[x]{item=a}\n   ::step{#s${i}}\n\n`)],
    ['paragraphs', repeated(2_400, (i) => `Take :remove[x]{item=a} out, number ${i}.\n\n`)],
    ['closed blocks', repeated(1_200, () => ':::danger{hazard=a harm=b}\nx\n:::\n\n')],
    ['lines to fill in', '| Name | ____________________ |\n'.repeat(400)],
    ['times of day', ' 10:30'.repeat(4_900)],
    ['long lines', repeated(90, () => `${'word '.repeat(1_000)}\n\n`)],
    ['sixty lists', repeated(60, (i) => `${'  '.repeat(i)}- a\n`)],
    ['sixty quotations', `${'> '.repeat(60)}a`],
    [
      'rounds in a few rounds',
      repeated(5, (i) => `${':'.repeat(9 - i)}repeat[until dry]\n\n1. Wait.\n\n`) +
        repeated(5, (i) => `${':'.repeat(5 + i)}\n`),
    ],
    ['nested emphasis', `${'*a **b '.repeat(120)}${'b** a*'.repeat(120)}`],
  ])('%s', (_, body) => {
    expect(kindsOf(body)).toEqual([]);
  });

  test('emphasis nested too deep for a tree is told', () => {
    expect(kindsOf(`${'*a '.repeat(900)}${'a* '.repeat(900)}`)).toEqual(['too-deep']);
  });

  test('one long list and 70 closed blocks are not deep', () => {
    const items = repeated(70, (i) => `${i}. a\n\n   :::danger{hazard=a harm=b}\n   x\n   :::\n`);
    const open = repeated(70, (i) => `${i}. a\n   :::danger{hazard=a harm=b}\n`);
    expect(kindsOf(items)).toEqual([]);
    expect(kindsOf(open)).toEqual(['directive-misplaced']);
  });
});

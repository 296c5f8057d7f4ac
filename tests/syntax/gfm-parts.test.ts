import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { expect, it } from 'vitest';
import { gfmPartsFor } from '../../src/syntax/gfm-parts.ts';
import { parseMarkdown } from '../../src/syntax/markdown.ts';

/** The whole of GitHub Flavored Markdown, as remark-gfm has it. */
const whole = unified()
  .use(remarkParse)
  .use(remarkGfm)
  .use(remarkFrontmatter, ['yaml'])
  .use(remarkDirective);

/** The tree as plain data, without what only our own reading adds. */
const plain = (tree: object): string =>
  JSON.stringify(tree, (key, value) => (key === 'position' || key === 'tokens' ? undefined : value))
    // A directive whose tokens were its only data.
    .replaceAll(',"data":{}', '');

const pieces = fc.constantFrom(
  'word',
  ' ',
  '\n',
  '\n\n',
  '- ',
  '1. ',
  '[ ]',
  '[x] ',
  '[\t]',
  '[^1]',
  '[^1]: ',
  '~',
  '~~',
  '|',
  ':-:',
  '-:',
  '---',
  'a | b',
  '\n|-|-|\n',
  'a\n:-\n',
  'www.',
  'example.org',
  'http://',
  'HTTPS://x.y',
  'me@example.org',
  'xmpp:',
  '&#64;',
  'http\\:',
  '//',
  '\\|',
  ':remove[x]{item=a}',
  '    ',
  '> ',
  '`',
  '\r\n',
);

it('with the parts that a text may use reads it as with all parts', () => {
  fc.assert(
    fc.property(fc.array(pieces, { maxLength: 24 }), (all) => {
      const text = all.join('');
      expect(plain(parseMarkdown(text))).toBe(plain(whole.parse(text)));
    }),
    { numRuns: 3_000, seed: 29 },
  );
});

it('reads the demo manual as with all parts', () => {
  const files = readdirSync('content/procedures', { recursive: true, encoding: 'utf8' });
  for (const file of files.filter((one) => one.endsWith('.md'))) {
    const text = readFileSync(join('content/procedures', file), 'utf8');
    expect(plain(parseMarkdown(text))).toBe(plain(whole.parse(text)));
  }
});

it('leaves out what a text without its signs cannot use', () => {
  expect(gfmPartsFor('1. Take it off.\n').map(({ name }) => name)).toEqual([]);
  expect(gfmPartsFor('a\n:-\n').map(({ name }) => name)).toEqual(['tables']);
});

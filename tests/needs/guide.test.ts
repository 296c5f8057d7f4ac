import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readExample, rules } from '../../src/rules/index.ts';
import { findingsOf, markOf } from '../rules/run-example.ts';

const folder = join(import.meta.dirname, '../../site/guide');
const chapters = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .sort()
  .map((name) => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
const examples = chapters.flatMap(({ name, text }) =>
  [...text.matchAll(/^```md\n([\s\S]*?)^```$/gm)].map(([, source = ''], i) => ({
    name: `${name}, example ${i + 1}`,
    source,
  })),
);

describe('examples of the guide', () => {
  test('there are some', () => expect(examples.length).toBeGreaterThan(12));

  test.for(examples)('$name gives what it marks and nothing else', ({ source }) => {
    const example = readExample(source);
    const found = findingsOf(example).map((finding) => placed(markOf(finding, example)));
    expect(found.sort()).toEqual(example.marks.map(placed).sort());
  });
});

describe('table of needs', () => {
  const rows = [
    ...(chapters.find(({ name }) => name === '9-needs.md')?.text ?? '').matchAll(
      /^\| (F\d\d) \| (.+?) \| (.+?) \| (.+?) \| ([a-z-]+) \|$/gm,
    ),
  ].map(([, id = '', , , checked = '', file = '']) => ({ id, checked, file }));
  // F33 and F80 were never given.
  const ids = Array.from({ length: 87 }, (_, i) => `F${String(i + 1).padStart(2, '0')}`).filter(
    (id) => id !== 'F33' && id !== 'F80',
  );

  test('has every need once', () => {
    expect(rows.map(({ id }) => id).sort()).toEqual(ids);
  });

  test.for(rows)(
    '$id has a test in $file, and names rules that there are',
    ({ id, checked, file }) => {
      const text = readFileSync(join(import.meta.dirname, `${file}.test.ts`), 'utf8');
      expect(text).toContain(`describe('${id} `);
      const known = rules.map((rule) => rule.id);
      for (const [, rule = ''] of checked.matchAll(/`([^`]+)`/g)) expect(known).toContain(rule);
    },
  );
});

function placed({ file, line, column, width, rule }: ReturnType<typeof markOf>): string {
  return `${file}:${line}:${column}+${width} ${rule}`;
}

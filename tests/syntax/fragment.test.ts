import { expect, test } from 'vitest';
import { parseMarkdownFragment } from '../../src/syntax/index.ts';

const point = { line: 9, column: 3, offset: 120 };
const place = { file: 'manual.yaml', start: point, end: { ...point, offset: 160 } };

test('standing text is plain Markdown', () => {
  const { value, facts } = parseMarkdownFragment(
    'Wear *gloves*.\n\n1. One\n2. Two [link][a]\n\n[a]: b.md',
    place,
  );
  expect(facts).toEqual([]);
  expect(value.map(({ type }) => type)).toEqual(['paragraph', 'list']);
});

test('directives and HTML in it are told at its place, and the words stay', () => {
  const { value, facts } = parseMarkdownFragment(
    'Always :fit[put the pin in]{item=pin} at 10:30.\n\n:::danger{hazard=a}\nKeep off.\n:::\n\n<b>x</b>',
    place,
  );
  expect(facts.map((fact) => [fact.kind, fact.place])).toEqual([
    ['directive-misplaced', place],
    ['directive-misplaced', place],
    ['raw-html', place],
    ['raw-html', place],
  ]);
  expect(facts[0]).toMatchObject({ name: 'fit', found: 'in standing text' });
  expect(value.map(({ type }) => type)).toEqual(['paragraph', 'paragraph', 'paragraph']);
});

test('text beyond all measure is told', () => {
  expect(parseMarkdownFragment('>'.repeat(1000), place)).toMatchObject({
    value: [],
    facts: [{ kind: 'too-deep', place }],
  });
});

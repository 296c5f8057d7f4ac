import { describe, expect, it } from 'vitest';
import type { Example, Mark } from '../../src/rules/index.ts';
import { pages } from './rule-pages.ts';
import { findingsOf, markOf } from './run-example.ts';

/** What the example marks and what is found, in one order; a message counts where the example gives it. */
function compared(example: Example): { found: Mark[]; expected: Mark[] } {
  const found = findingsOf(example)
    .map((finding) => markOf(finding, example))
    .toSorted(inOrder);
  const expected = [...example.marks].sort(inOrder);
  return {
    found: found.map((mark, i) =>
      expected[i]?.message === undefined ? { ...mark, message: undefined } : mark,
    ),
    expected,
  };
}

function inOrder(a: Mark, b: Mark): number {
  const key = (mark: Mark): string =>
    [
      mark.file,
      mark.line.toString().padStart(5),
      mark.column.toString().padStart(5),
      mark.rule,
    ].join(' ');
  return key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0;
}

describe.for(pages)('$id', ({ id, bad, good }) => {
  it.for(bad.map((example, i) => ({ example, i })))(
    'bad example $i gives what it marks',
    ({ example }) => {
      const { found, expected } = compared(example);
      expect(found).toEqual(expected);
      expect(expected.map((mark) => mark.rule)).toContain(id);
    },
  );

  it.for(good.map((example, i) => ({ example, i })))(
    'good example $i gives nothing',
    ({ example }) => {
      expect(example.marks).toEqual([]);
      expect(findingsOf(example)).toEqual([]);
    },
  );
});

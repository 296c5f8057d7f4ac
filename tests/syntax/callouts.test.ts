import { expect, test } from 'vitest';
import { dataOf, read } from './carets.ts';

const figuresIn = (marked: string) =>
  read(marked).procedure.sections.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.type === 'figure' ? [block] : [])),
  );

test('call-outs of a figure have items or words, and one point or more; the rest is the caption', () => {
  const [figure] = figuresIn(`:::figure{src="a.svg" alt="The anvil"}
::callout{item=anvil-bolt at="62,40"}
::callout[gap at *both* ends]{at="12.5, 0   100,99.9"}
::callout[old anvil]{item=anvil at="3,4"}

The anvil from below.
:::`);
  expect(figure?.callouts).toMatchObject([
    { item: { id: 'anvil-bolt' }, words: '', points: [{ x: 62, y: 40 }] },
    {
      item: undefined,
      words: 'gap at both ends',
      points: [
        { x: 12.5, y: 0 },
        { x: 100, y: 99.9 },
      ],
    },
    { item: { id: 'anvil' }, words: 'old anvil', points: [{ x: 3, y: 4 }] },
  ]);
  expect(figure?.blocks).toMatchObject([{ type: 'prose' }]);
});

test('a point outside of the picture, or that is none, is told with what to write', () => {
  const told = read(`:::figure{src="a.svg" alt="The anvil"}
::callout{item=anvil at="101,40"}
                         ^^^^^^ attribute-wrong
::callout{item=anvil at="-1,40"}
                         ^^^^^ attribute-wrong
::callout{item=anvil at="62"}
                         ^^ attribute-wrong
::callout{item=anvil}
^^^^^^^^^^^^^^^^^^^^^ attribute-wrong
:::`);
  expect(dataOf(told)).toMatchObject({
    attribute: 'at',
    found: '101,40',
    expected: expect.stringMatching(/^percentages of the picture .*"62,40"/),
  });
  const [section] = told.procedure.sections;
  expect(section?.blocks).toMatchObject([{ type: 'figure', callouts: [] }]);
});

test('a call-out of nothing is told', () => {
  const told = read(`:::figure{src="a.svg" alt="The anvil"}
::callout{at="62,40"}
^^^^^^^^^^^^^^^^^^^^^ attribute-wrong
:::`);
  expect(dataOf(told)).toMatchObject({
    attribute: 'item',
    expected: 'an item of the catalogue, or words in square brackets where it has none',
  });
});

test('no action can hide in the words of a call-out', () => {
  read(`:::figure{src="a.svg" alt="The anvil"}
::callout[:remove{item=anvil}]{at="62,40"}
          ^^^^^^^^^^^^^^^^^^^ directive-misplaced
:::`);
});

test('a call-out stands directly in a figure', () => {
  read(`::callout{item=anvil at="62,40"}
^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced

:::figure{src="a.svg" alt="The anvil"}
1. Look.
   ::callout{item=anvil at="62,40"}
   ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
:::`);
});

import { expect, test } from 'vitest';
import { dataOf, read } from './carets.ts';

test(':::if has one way, which may be taken or not', () => {
  const { procedure } = read(
    `:::if[the *belt* is
cracked]
:::`.replace('is\ncracked', 'is cracked'),
  );
  expect(procedure.sections[0]?.blocks).toMatchObject([
    { type: 'branch', optional: true, ways: [{ label: 'the belt is cracked', blocks: [] }] },
  ]);
});

test(':::either takes the :::or blocks that follow it', () => {
  const { procedure, text } = read(`1. Look.

   :::either[it is cracked]
   :replace{item=belt}
   :::
   :::or[it is worn]
   Turn it.
   :::

   :::or[it is sound]
   :::
2. Go on.`);
  const [list] = procedure.sections[0]?.blocks ?? [];
  const blocks = list?.type === 'steps' ? (list.steps[0]?.blocks ?? []) : [];
  expect(blocks).toMatchObject([
    { type: 'prose' },
    {
      type: 'branch',
      optional: false,
      ways: [{ label: 'it is cracked' }, { label: 'it is worn' }, { label: 'it is sound' }],
    },
  ]);
  const { start, end } = blocks[1]?.place ?? procedure.place;
  expect(text.slice(start.offset, end.offset)).toMatch(
    /^:::either[\s\S]*:::or\[it is sound\]\n {3}:::$/,
  );
});

test('an :::either without :::or, and an :::or without :::either', () => {
  const result = read(`:::either[it is cracked]
^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
:::

Text between.

:::or[it is sound]
^^^^^^^^^^^^^^^^^^ directive-misplaced
:::`);
  expect(dataOf(result, 0)).toMatchObject({ name: 'either', found: 'no :::or after it' });
  expect(dataOf(result, 1)).toMatchObject({ name: 'or', found: 'no :::either before it' });
  const branches = result.procedure.sections[0]?.blocks.filter(({ type }) => type === 'branch');
  expect(branches).toMatchObject([{ optional: true }, { optional: true }]);
});

test('a branch without words', () => {
  const result = read(`:::if{label=cracked}
^^^^^^^^^^^^^^^^^^^^ attribute-wrong
      ^^^^^ attribute-wrong
:::

:::if[]
^^^^^^^ attribute-wrong
:::`);
  expect(dataOf(result)).toMatchObject({ attribute: '[…]' });
});

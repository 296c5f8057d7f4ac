import { describe, expect, test } from 'vitest';
import { dataOf, read } from './carets.ts';

describe('a block that is not closed', () => {
  test('is told at its opening line', () => {
    const result = read(`:::danger{hazard=a harm=b}
^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
Keep off.

## Removal

Text.`);
    expect(dataOf(result)).toMatchObject({ name: 'danger', found: 'no line that closes it' });
  });

  test('in a step ends with the step', () => {
    const { procedure } = read(`1. Drain.

   :::fluid{item=coolant}
   ^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
   Catch it.
2. Go on.`);
    const [list] = procedure.sections[0]?.blocks ?? [];
    expect(list?.type === 'steps' && list.steps.length).toBe(2);
  });

  test('whose closing line stands too far left is told with that line', () => {
    read(`1. Drain.

   :::fluid{item=coolant}
   ^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
   Catch it.
:::
^^^ directive-misplaced
`);
  });

  test('before another one names the line that it takes', () => {
    const result = read(`:::danger{hazard=a harm=b}
Keep off.

:::caution{hazard=c harm=d}
^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
Go slow.
:::`);
    expect(dataOf(result)).toMatchObject({
      name: 'caution',
      found: 'no line that closes it',
      outer: { name: 'danger', colons: 3, line: 6 },
    });
  });
});

describe('a block in a block', () => {
  test('with more colons outside', () => {
    const { procedure } = read(`::::danger{hazard=a harm=b}
:::figure{src=a.svg alt=b}
The pin.
:::
More.
::::`);
    const [panel] = procedure.sections[0]?.blocks ?? [];
    if (panel?.type !== 'hazard') throw new Error('no panel');
    expect(panel.blocks.map(({ type }) => type)).toEqual(['figure', 'prose']);
  });

  test('with as many colons is told at the inner one and at the line left over', () => {
    read(`:::danger{hazard=a harm=b}
:::figure{src=a.svg alt=b}
^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
The pin.
:::
More.
:::
^^^ directive-misplaced`);
  });
});

describe('a block inside text', () => {
  test('of a bullet list or quotation is told, and its words stay', () => {
    const { procedure } = read(`- Bullet
  :::danger{hazard=a harm=b}
  ^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
  Put in :fit{item=pin}.
  :::

> ::perform{procedure=a}
  ^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
> ::unknown{a=b}
  ^^^^^^^^^^^^^^ directive-unknown`);
    const [list] = procedure.sections[0]?.blocks ?? [];
    expect(list?.type === 'prose' && list.actions.map(({ item }) => item.id)).toEqual(['pin']);
  });
});

describe('HTML', () => {
  test('is told wherever it stands and never reaches the text', () => {
    const result = read(`Some <b>bold</b> text.
     ^^^ raw-html
            ^^^^ raw-html

<div class="x">
^^^^^^^^^^^^^^^ raw-html

- <br>
  ^^^^ raw-html`);
    expect(JSON.stringify(result.procedure.sections)).not.toContain('"html"');
    expect(dataOf(result, 2)).toEqual({ kind: 'raw-html', html: '<div class="x">' });
  });

  // CommonMark 0.31.2, section 6.6: <!-->, <!---> and <!-- ... --> are comments.
  test.each(['<!-- a note -->', '<!---->', '<!-->', '<!--->', 'Text <!-- a --> on.'])(
    '%s is a comment and is left out',
    (line) => {
      expect(JSON.stringify(read(line).procedure.sections)).not.toContain('<!--');
    },
  );

  test('behind a comment on its line is told', () => {
    read(`<!-- a --> Remove the bolts.
^^^^^^^^^^^^^^^^^^^^^^^^^^^^ raw-html`);
  });

  test('that opens a comment and does not close it is told', () => {
    read(`<!-- a note
^^^^^^^^^^^ raw-html`);
  });
});

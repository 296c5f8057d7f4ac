import { describe, expect, test } from 'vitest';
import { dataOf, read } from './carets.ts';

const body = `:::waive{rule=left-out item=belt until=2027-03-31}
The belt comes later.
Decided by *A. Nobody*.

- It is slow to come.
- Nobody runs the machine.
:::

## Removal

1. :remove{item=belt}

   ::waive[Stays off.]{rule=left-out}

   1. Look on.

      :::waive{rule=blocked}
      Known.
      :::

::waive{rule=left-open}
`;

describe('a waiver', () => {
  const { procedure, text } = read(body);
  const scopes = procedure.waivers.map(({ scope }) =>
    text.slice(scope.start.offset, scope.end.offset),
  );

  test('has its rule, item, last day and reason on one line', () => {
    expect(procedure.waivers[0]).toMatchObject({
      rule: { id: 'left-out' },
      item: { id: 'belt' },
      until: { text: '2027-03-31' },
      reason:
        'The belt comes later. Decided by A. Nobody. It is slow to come. Nobody runs the machine.',
    });
    expect(procedure.waivers.map(({ reason }) => reason).slice(1)).toEqual([
      'Stays off.',
      'Known.',
      '',
    ]);
  });

  test('holds for the whole file, its step, or its section', () => {
    expect(scopes[0]).toBe(text);
    expect(scopes[1]).toMatch(/^1\. :remove[\s\S]*Known\.\s+:::$/);
    expect(scopes[2]).toMatch(/^1\. Look on\.[\s\S]*Known\.\s+:::$/);
    expect(scopes[3]).toMatch(/^## Removal[\s\S]*left-open}$/);
  });

  test('stands at its opening line, and leaves no block', () => {
    const [first] = procedure.waivers;
    expect(text.slice(first?.place.start.offset, first?.place.end.offset)).toBe(
      ':::waive{rule=left-out item=belt until=2027-03-31}',
    );
    expect(
      procedure.sections.map(({ id, blocks }) => [id, blocks.map(({ type }) => type)]),
    ).toEqual([['removal', ['steps']]]);
  });
});

describe('a waiver that is not written as it should be', () => {
  test.each(['2027-3-31', '2027-02-29', '31.3.2027', 'soon'])('until %s holds nothing', (until) => {
    const result = read(`:::waive{rule=left-out until=${until}}
                             ${'^'.repeat(until.length)} attribute-wrong
Why not.
:::`);
    expect(result.procedure.waivers).toEqual([]);
    expect(dataOf(result)).toMatchObject({
      attribute: 'until',
      found: until,
      expected: 'a date that the calendar has, such as 2027-03-31',
    });
  });

  test('a leap day is a date', () => {
    const { procedure } = read(':::waive{rule=left-out until=2028-02-29}\nWhy.\n:::');
    expect(procedure.waivers.map(({ until }) => until?.text)).toEqual(['2028-02-29']);
  });

  test.each([
    `:::waive{item=belt}
^^^^^^^^^^^^^^^^^^^ attribute-wrong
Why.
:::`,
    `:::waive{rule=left-out item="The belt"}
                             ^^^^^^^^ attribute-wrong
Why.
:::`,
    `:::waive{rule=left-out itm=belt}
                       ^^^ attribute-wrong
Why.
:::`,
  ])('a faulty attribute holds nothing: %s', (marked) => {
    expect(read(marked).procedure.waivers).toEqual([]);
  });

  test('an action or a block in its reason is told, and does not count', () => {
    const { procedure } = read(`1. Look.

   :::waive{rule=left-out}
   We :remove[take the belt off]{item=belt} later.
      ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced

   ::perform{procedure=other}
   ^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced
   :::`);
    expect(procedure.waivers.map(({ reason }) => reason)).toEqual(['We take the belt off later.']);
  });

  test('in a bullet list it has no place', () => {
    const { procedure } = read(`- Look.

  ::waive[Why.]{rule=left-out}
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ directive-misplaced`);
    expect(procedure.waivers).toEqual([]);
  });
});

import { describe, expect, test } from 'vitest';
import type { Block } from '../../src/syntax/index.ts';
import { dataOf, read } from './carets.ts';

const blocksOf = (marked: string): readonly Block[] =>
  read(marked).procedure.sections.flatMap(({ blocks }) => blocks);

describe('a hazard', () => {
  test.each(['danger', 'warning', 'caution', 'notice'])('%s', (signal) => {
    const [panel] =
      blocksOf(`:::${signal}{hazard="Drum can turn" harm='Amputation' when="feed = hydraulic"}
Fit the pin.

- Twice.
:::`);
    expect(panel).toMatchObject({
      type: 'hazard',
      signal,
      of: undefined,
      hazard: { text: 'Drum can turn' },
      harm: { text: 'Amputation' },
      when: { written: 'feed = hydraulic' },
      blocks: [{ type: 'prose' }, { type: 'prose' }],
    });
  });

  test('from the catalogue', () => {
    expect(blocksOf('::hazard{of=drum-turns}')).toMatchObject([
      { type: 'hazard', signal: undefined, of: { id: 'drum-turns' }, blocks: [] },
    ]);
  });

  test('that does not say which', () => {
    expect(
      blocksOf(`::hazard{off=drum-turns}
         ^^^ attribute-wrong`),
    ).toEqual([]);
  });

  test('with a label is told, and the words stay', () => {
    const result = read(`:::danger[Drum can turn]{harm=a}
          ^^^^^^^^^^^^^ attribute-wrong
Keep off.
:::`);
    expect(dataOf(result)).toMatchObject({ attribute: '[…]', found: 'Drum can turn' });
    expect(result.procedure.sections[0]?.blocks[0]).toMatchObject({
      blocks: [{ type: 'prose' }, { type: 'prose' }],
    });
  });

  test('with empty words', () => {
    read(`:::danger{hazard="" harm=b colour=red}
          ^^^^^^^^^ attribute-wrong
                           ^^^^^^ attribute-wrong
:::`);
  });
});

describe('a block about an item', () => {
  test.each(['::torque{item=anvil-bolt}', ':::torque{item=anvil-bolt}\nIn a cross.\n:::'])(
    '%s',
    (source) => {
      const body = source.includes('cross') ? [{ type: 'prose' }] : [];
      expect(blocksOf(source)).toMatchObject([
        { type: 'torque', item: { id: 'anvil-bolt' }, action: undefined, blocks: body },
      ]);
    },
  );

  test.each(['::fluid{item=coolant when=winch}', ':::fluid{item=coolant when=winch}\n:::'])(
    '%s',
    (source) => {
      expect(blocksOf(source)).toMatchObject([
        { type: 'fluid', item: { id: 'coolant' }, when: { written: 'winch' }, blocks: [] },
      ]);
    },
  );

  test('without its item leaves its body', () => {
    expect(
      blocksOf(`:::torque
^^^^^^^^^ attribute-wrong
In a cross.
:::`),
    ).toMatchObject([{ type: 'prose' }]);
  });
});

describe('other blocks', () => {
  test('needs', () => {
    expect(blocksOf(':::needs{step="pin-in, bolts-out"}\nElse it turns.\n:::')).toMatchObject([
      {
        type: 'needs',
        steps: [{ id: 'pin-in' }, { id: 'bolts-out' }],
        blocks: [{ type: 'prose' }],
      },
    ]);
    const result = read(`::needs{step="pin-in, Bolts"}
                      ^^^^^ attribute-wrong`);
    expect(dataOf(result)).toMatchObject({ attribute: 'step', found: 'Bolts' });
  });

  test('figure', () => {
    const [figure] = blocksOf(
      ':::figure{#pin src="figures/pin.svg" alt="The pin in its hole"}\nThe *pin*.\n:::',
    );
    expect(figure).toMatchObject({
      type: 'figure',
      id: { id: 'pin' },
      src: { text: 'figures/pin.svg' },
      alt: 'The pin in its hole',
      blocks: [{ type: 'prose' }],
    });
    expect(blocksOf('::figure{src=a.svg}')).toMatchObject([{ type: 'figure', alt: undefined }]);
    read(`::figure{alt=a}
^^^^^^^^^^^^^^^ attribute-wrong`);
  });

  test('perform and reverse', () => {
    expect(
      blocksOf(`::perform{procedure=make-safe part=removal when=winch}
::reverse{of=removal except=anvil,cover}`),
    ).toMatchObject([
      {
        type: 'perform',
        procedure: { id: 'make-safe' },
        part: { id: 'removal' },
        inPlace: false,
        when: { written: 'winch' },
      },
      { type: 'reverse', of: { id: 'removal' }, except: [{ id: 'anvil' }, { id: 'cover' }] },
    ]);
    expect(blocksOf('::perform{procedure=make-safe in-place}')).toMatchObject([{ inPlace: true }]);
    read(`::perform{procedure=a in-place=no}
                               ^^ attribute-wrong`);
    expect(
      blocksOf(`::perform{part=removal}
^^^^^^^^^^^^^^^^^^^^^^^ attribute-wrong

::reverse
^^^^^^^^^ attribute-wrong`),
    ).toEqual([]);
  });

  test('when', () => {
    const { procedure, text } = read(`:::when[ feed = hydraulic & !winch ]
:remove{item=a}
:::`);
    const [guarded] = procedure.sections[0]?.blocks ?? [];
    expect(guarded).toMatchObject({
      type: 'guarded',
      when: { written: 'feed = hydraulic & !winch', condition: { kind: 'all' } },
      blocks: [{ type: 'prose' }],
    });
    if (guarded?.type !== 'guarded') throw new Error('not guarded');
    const { start, end } = guarded.when.place;
    expect(text.slice(start.offset, end.offset)).toBe('feed = hydraulic & !winch');
  });

  test('when without a condition that can be read', () => {
    const blocks = blocksOf(`:::when{feed=hydraulic}
^^^^^^^^^^^^^^^^^^^^^^^ attribute-wrong
        ^^^^ attribute-wrong
Text.
:::

:::when[feed = = x]
               ^ condition-wrong
Text.
:::`);
    expect(blocks.map(({ type }) => type)).toEqual(['prose', 'prose']);
  });
});

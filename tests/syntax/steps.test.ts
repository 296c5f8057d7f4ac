import { describe, expect, test } from 'vitest';
import { allActions } from '../../src/link/index.ts';
import type { Step } from '../../src/syntax/index.ts';
import { dataOf, read } from './carets.ts';

function stepsOf(marked: string): readonly Step[] {
  const { procedure } = read(marked);
  const lists = procedure.sections.flatMap(({ blocks }) => blocks);
  return lists.flatMap((block) => (block.type === 'steps' ? block.steps : []));
}

describe('a step', () => {
  test('is an item of a numbered list, whatever its number', () => {
    expect(stepsOf('1. a\n1. b\n7. c\n\nText.\n\n3) d')).toHaveLength(4);
  });

  test('has its facts from ::step, directly under a line or after an empty one', () => {
    const [first, second] = stepsOf(`1. :remove{item=a}
   ::step{#bolts-out needs="pin-in, cover-off" when=winch people=2 time="10 min" wait="1 h" tools=hoist consumables=grease}
2. Text

   ::step{id=later}`);
    expect(first).toMatchObject({
      id: { id: 'bolts-out' },
      needs: [{ id: 'pin-in' }, { id: 'cover-off' }],
      when: { written: 'winch' },
      people: 2,
      time: { text: '10 min' },
      wait: { text: '1 h' },
      tools: [{ id: 'hoist' }],
      consumables: [{ id: 'grease' }],
      blocks: [{ type: 'prose' }],
    });
    expect(second).toMatchObject({ id: { id: 'later' }, people: 1, time: undefined, needs: [] });
  });

  test('has sub-steps, blocks and bullets inside', () => {
    const [step] = stepsOf(`1. Main
   1. Sub
      ::step{#sub}
   - bullet

   ::hazard{of=drum}`);
    expect(step?.blocks.map(({ type }) => type)).toEqual(['prose', 'steps', 'prose', 'hazard']);
    expect(step?.id).toBeUndefined();
  });

  test('may stand inside a block', () => {
    const { procedure } = read('::::when[winch]\n1. a\n2. b\n::::');
    expect(procedure.sections[0]?.blocks).toMatchObject([
      { type: 'guarded', blocks: [{ type: 'steps', steps: [{}, {}] }] },
    ]);
  });

  test.each([
    [
      '1. a\n   ::step{#a}\n   ::step{#b}\n   ^^^^^^^^^^ directive-misplaced',
      'a second one in the same step',
    ],
    ['Text\n\n::step{#a}\n^^^^^^^^^^ directive-misplaced', 'outside a numbered step'],
    [
      '1. a\n   :::when[winch]\n   ::step{#a}\n   ^^^^^^^^^^ directive-misplaced\n   :::',
      'outside a numbered step',
    ],
    ['- a\n  ::step{#a}\n  ^^^^^^^^^^ directive-misplaced', 'inside a bullet list or a quotation'],
  ])('%j has a misplaced one', (marked, found) => {
    expect(dataOf(read(marked))).toMatchObject({ name: 'step', found });
  });

  test('with wrong facts keeps the others', () => {
    const [step] = stepsOf(`1. a
   ::step{#Bolts people=two time="10 min" need=pin}
           ^^^^^ attribute-wrong
                        ^^^ attribute-wrong
                                          ^^^^ attribute-wrong`);
    expect(step).toMatchObject({ id: undefined, people: 1, time: { text: '10 min' } });
  });
});

describe('a torque block', () => {
  const torques = (marked: string): (string | undefined)[] =>
    [...allActions(read(marked).procedure)].map(
      ({ verb, item, node }) => `${verb} ${item.id} ${node ? 'said' : 'shown'}`,
    );

  test('stands for the action in its step', () => {
    expect(torques('1. Tighten.\n   :::torque{item=a}\n   :::')).toEqual(['torque a shown']);
    expect(torques('1. Tighten.\n   ::torque{item=a}')).toEqual(['torque a shown']);
  });

  test('only once, and not where the step says it', () => {
    expect(torques('1. ::torque{item=a}\n   ::torque{item=a}')).toEqual(['torque a shown']);
    expect(torques('1. ::torque{item=a}\n\n   Then :torque{item=a}.')).toEqual(['torque a said']);
    expect(torques('1. :torque{item=b}\n   ::torque{item=a}')).toEqual([
      'torque b said',
      'torque a shown',
    ]);
  });

  test('counts in each step anew and in no section', () => {
    expect(torques('1. :torque{item=a}\n2. ::torque{item=a}')).toEqual([
      'torque a said',
      'torque a shown',
    ]);
    expect(torques('::torque{item=a}')).toEqual([]);
  });

  test('keeps its condition to itself', () => {
    const [block] = stepsOf('1. ::torque{item=a when=winch}')[0]?.blocks ?? [];
    expect(block).toMatchObject({ when: { written: 'winch' }, action: { when: undefined } });
  });
});

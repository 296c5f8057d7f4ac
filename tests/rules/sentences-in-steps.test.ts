import { describe, expect, it } from 'vitest';
import { wordsFound, wordsFoundIn } from './inspect-step.ts';

const found = (step: string, rule: string) => wordsFound(step).filter((one) => one.rule === rule);
const words = (count: number): string => Array.from({ length: count }, () => 'word').join(' ');

// ASD-STE100 Issue 9 (2025-01-15), rule 5.1: 20 words at most in a procedural sentence. Its rules for
// counting words (section 8) are from memory.
describe('sentence-too-long', () => {
  it.for([
    ['twenty words', `${words(20)}.`],
    ['two sentences of twenty', `${words(20)}. ${words(20)}.`],
    ['a hyphenated group as one', `${words(19)} three-way-cock.`],
    ['brackets as a sentence of their own', `${words(20)} (${words(20)}).`],
    ['a quoted title as one', `${words(19)} “${words(6)}”.`],
    ['a link as one', `${words(19)} [${words(6)}](#a).`],
    ['a dash as none', `${words(10)} – ${words(10)}.`],
  ] as const)('counts %s', ([, step]) => {
    expect(found(step, 'sentence-too-long')).toEqual([]);
  });

  it.for([
    ['21 words', `${words(21)}.`, 21],
    ['a figure and a unit as one each', `${words(19)} 22 N·m.`, 21],
    ['the words of an action', `:check[${words(15)}]{item=belt} ${words(7)}.`, 22],
    ['long brackets', `${words(3)} (${words(25)}).`, 25],
    ['the second sentence', `${words(3)}. ${words(23)}.`, 23],
  ] as const)('tells %s', ([, step, count]) => {
    const [one, ...more] = found(step, 'sentence-too-long');
    expect([one?.level, one?.data.words, more.length]).toEqual(['note', count, 0]);
  });

  it('looks at steps only', () => {
    expect(wordsFoundIn(`${words(40)}.`)).toEqual([]);
  });
});

describe('several-actions', () => {
  const check = ':check[look]{item=belt}';
  it('lets three pass, in each sentence', () => {
    const three = `${check}, ${check} and ${check}.`;
    expect(found(`${three} ${three}`, 'several-actions')).toEqual([]);
  });

  it('tells four', () => {
    const step = `${check}, ${check}, ${check} and ${check}. ${check}.`;
    expect(found(step, 'several-actions').map(({ data }) => data.count)).toEqual([4]);
  });
});

// ASD-STE100 Issue 9, rule 5.3: instructions as commands. The sentences are our own.
describe('not-imperative', () => {
  it.for([
    'Remove dirt from the seat.',
    'Look at the belt. You should see no cracks.',
    'The belt is tensioned correctly when it gives by a finger.',
    'The bolts are torqued by the maker and sealed.',
    'If you must lift the guard alone, use the hoist.',
    'The belt guard is heavy.',
    'You hear a click.',
    'The needle is to stay in the green field.',
  ])('says nothing to: %s', (step) => {
    expect(found(step, 'not-imperative').map(({ message }) => message)).toEqual([]);
  });

  it.for([
    ['You should look at the belt.', 'You should'],
    ['You must now look at the belt.', 'You must'],
    ['The technician must look at the belt.', 'The technician must'],
    ['The guard bolts are removed.', 'The guard bolts are removed'],
    ['All four bolts should be tightened evenly.', 'All four bolts should be tightened'],
    ['The belt guard is then fitted.', 'The belt guard is then fitted'],
  ] as const)('finds in: %s', ([step, said]) => {
    expect(found(step, 'not-imperative').map(({ data }) => data.words)).toEqual([said]);
  });
});

describe('untracked-action outside of steps', () => {
  const untracked = (body: string) =>
    wordsFoundIn(body)
      .filter(({ rule }) => rule === 'untracked-action')
      .map(({ data }) => data.words);

  it.for([
    '## Why\n\nReplace the belt every 500 h.',
    '## Why\n\nRemove the belt guard before you look at the belt.',
    '## Why\n\nThe guard bolts hold the belt guard. Loosen screws are a fault.',
    '## Why\n\nInstall software of the maker.',
    'Remove the belt guard with care.',
    '## Work\n\nRemove the belt guard with care.\n\n1. :remove{item=guard}',
    '## Work\n\nRemove the belt guard.\n\n::perform{procedure=b}',
    '## Work\n\nRemove the belt guard: :remove[lift it]{item=guard}.',
    '| Fault | Action |\n| --- | --- |\n| slips | Replace the belt. |',
    '| Every | What to do |\n| --- | --- |\n| 50 h | Tighten the guard bolts. |',
    '| Item | Note |\n| --- | --- |\n| belt | Remove the belt guard. |',
  ])('says nothing to: %s', (body) => {
    expect(untracked(body)).toEqual([]);
  });

  it.for([
    ['Step 1: Remove the belt guard.', 'Remove the belt guard'],
    ['(2) Remove the cover.', 'Remove the cover'],
    ['b) Loosen the guard bolts.', 'Loosen the guard bolts'],
    ['## Work\n\nRemove the belt guard.', 'Remove the belt guard'],
    ['## Work\n\nWear gloves. Loosen the guard bolts.', 'Loosen the guard bolts'],
    ['| No. | Action |\n| --- | --- |\n| 1 | Remove the belt guard. |', 'Remove the belt guard'],
    ['| Step | Tool |\n| --- | --- |\n| Remove the cover. | Spanner |', 'Remove the cover'],
  ] as const)('finds in: %s', ([body, said]) => {
    expect(untracked(body)).toEqual([said]);
  });

  it('keeps the place of words after a typed number', () => {
    const [one] = wordsFoundIn('Step 1: Remove the belt guard.');
    expect(one?.start.column).toBe(9);
    expect(one?.fix?.edits[0]?.text).toBe(':remove[Remove the belt guard]{item=guard}');
  });
});

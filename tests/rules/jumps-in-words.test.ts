import { describe, expect, it } from 'vitest';
import { wordsFoundIn } from './inspect-step.ts';

// Sentences as writers put them; common practice, no published source.

const sound = [
  'If the gap is too wide, start again at [Measure](#measure).\n   ::step{#measure}',
  'Press the pedal. Repeat from [the pedal](#press) until no bubbles come.\n   ::step{#press}',
  'Repeat [steps 1 and 2](#press) until no bubbles come.\n   ::step{#press}',
  'If it drips, go back to [step 1](#press).\n   ::step{#press}',
  'Look.\n\n   :::if[it drips]\n   Go back to step 1.\n   :::',
  'Read step 4 first.',
  'Do not repeat step 1.',
  'Before you repeat step 1, wait a minute.',
  'Repeat the measurement twice.',
  'Repeat the check at the other end.',
  'The gap is the same for the other three.',
  'Turn the shaft in the same way as the drum.',
  'Go to the control panel.',
  'Move the lever to step plate 2.',
  'The label says "repeat steps 1 to 5".',
  'Check `go to step 4` in the code.',
  ':loosen[Loosen one guard bolt]{item=guard-bolt}, then do the same for the other three.',
  ':remove{item=guard} in the same way as the left one.',
  ':loosen{item=guard-bolt} in numerical sequence.',
];

const unsound: readonly (readonly [step: string, words: string, jump: string])[] = [
  ['Repeat steps 1 to 5.', 'Repeat steps 1 to 5', 'again'],
  ['Repeat [steps 1 to 5](#x).\n   ::step{#x}', 'Repeat steps 1 to 5', 'again'],
  ['Perform steps 3 through 8.', 'Perform steps 3 through 8', 'again'],
  ['Repeat the previous steps.', 'Repeat the previous steps', 'again'],
  ['Repeat steps (1) and (2) until no bubbles come.', 'Repeat steps (1) and (2)', 'again'],
  ['Do the same for the right side.', 'Do the same for the right side', 'again'],
  ['Same for the other three.', 'Same for the other three', 'again'],
  ['Look, then do the same on the opposite side.', 'do the same on the opposite side', 'again'],
  ['Repeat the procedure for the other side.', 'Repeat the procedure for the other side', 'again'],
  ['Repeat on the left side.', 'Repeat on the left side', 'again'],
  ['Proceed in a similar manner.', 'Proceed in a similar manner', 'again'],
  [
    ':loosen[Loosen one guard bolt]{item=guard-bolt qty=1}, then do the same for the other three.',
    'do the same for the other three',
    'again',
  ],
  ['If it is tight, go to step 14.', 'go to step 14', 'go'],
  ['Continue with step 9.', 'Continue with step 9', 'go'],
  ['Go back to step 1.', 'Go back to step 1', 'go'],
  ['If it is tight, the procedure is complete.\n2. B.', 'the procedure is complete', 'stop'],
  [
    'Take the pump apart in the numerical sequence of figure 3.',
    'in the numerical sequence of figure 3',
    'order',
  ],
];

const jumps = (step: string) =>
  wordsFoundIn(`1. ${step}`).filter(({ rule }) => rule === 'jump-in-words');

describe('jump-in-words', () => {
  it.for(sound)('says nothing to: %s', (step) => {
    expect(jumps(step).map(({ message }) => message)).toEqual([]);
  });

  it.for(unsound)('finds in: %s', ([step, words, jump]) => {
    expect(jumps(step).map(({ data }) => [data.words, data.jump])).toEqual([[words, jump]]);
  });

  it('says how to have a section done again', () => {
    expect(jumps('Repeat steps 1 to 5.')[0]?.help).toContain('`::perform{procedure=a part=…}`');
  });
});

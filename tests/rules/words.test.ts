import { describe, expect, it } from 'vitest';
import { wordsFound, wordsFoundIn } from './inspect-step.ts';

/** Sentences as a careful writer puts them; common practice, no published source. */
const sound = [
  'Do not remove the belt guard.',
  'Never loosen the guard bolts while the engine runs.',
  'Before you remove the belt guard, wait until the drum stands still.',
  'Make sure that the belt guard is tight and the guard bolts are in.',
  'Check that nothing can fall into the housing.',
  'Fill in the record sheet.',
  'Fill out the form and sign it.',
  'Remove dirt and grease from the seat.',
  'Remove all traces of the old gasket.',
  'Drain plugs with a worn hex are scrap.',
  'Torque wrench and feeler gauge must be at hand.',
  'Cap screws of this size are never used again.',
  'Hold the bolt head firmly and count the turns.',
  'Push the hose firmly home.',
  'Keep the bolts in a tray.',
  'Turn the drum by hand.',
  ':loosen[Loosen the guard bolts]{item=guard-bolt} in the reverse order of tightening.',
  'Let the engine cool for 10 min.',
  'Clean the threads, and let them dry.',
  'After you drain, fill and bleed the system, write the date on the tag.',
  'Remove :remove[the four guard bolts]{item=guard-bolt}.',
  'Take out and keep :remove[the four guard bolts]{item=guard-bolt}.',
  ':remove[Take the four guard bolts out]{item=guard-bolt}. Remove them one at a time.',
  ':remove[Take the belt guard off]{item=guard} and throw it away.',
  ':loosen[Back off the guard bolts]{item=guard-bolt} by one turn, then tighten them a little.',
  'Set the torque wrench and tighten as needed.',
  'Use the torque wrench as required.',
  'Remove the torque wrench.',
  'The label says "Remove the belt guard".',
  'The note reads “Drain the oil first”.',
  'Look at `remove the guard` in the code.',
  'Read [Remove the guard](a.md).',
  'The belt and the guard are heavy.',
  'When the engine is cold, look at the belt.',
  'Run the drum in reverse for 5 s.',
  'Wear gloves and take off your rings.',
  'Wait, then read the gauge.',
  'To remove the belt guard you need two people.',
  ':torque[Tighten the guard bolts securely]{item=guard-bolt}.',
];

const unsound: readonly (readonly [step: string, words: string, rule: string])[] = [
  ['Remove the belt guard.', 'Remove the belt guard', 'untracked-action'],
  ['Carefully lift off the shield.', 'lift off the shield', 'untracked-action'],
  ['Take the belt guard off and lay it aside.', 'Take the belt guard', 'untracked-action'],
  ['Wait 5 min, then drain the gear oil.', 'drain the gear oil', 'untracked-action'],
  ['Clean the seat and install the belt.', 'install the belt', 'untracked-action'],
  ['If the belt is wet, remove the belt.', 'remove the belt', 'untracked-action'],
  ['Disconnect the return hose.', 'Disconnect the return hose', 'untracked-action'],
  ['Shut the fuel cock.', 'Shut the fuel cock', 'untracked-action'],
  ['Turn the fuel cock to shut.', 'Turn the fuel cock', 'untracked-action'],
  ['Put the belt guard on.', 'Put the belt guard', 'untracked-action'],
  ['Pull the drum pin.', 'Pull the drum pin', 'untracked-action'],
  ['Loosen all guard bolts.', 'Loosen all guard bolts', 'untracked-action'],
  [':remove{item=belt} and drain the sump.', 'drain the sump', 'untracked-action'],
  [':tighten[Tighten the hose band securely]{item=band}.', 'securely', 'vague-torque'],
  [':tighten[the hose band]{item=band} firmly.', 'firmly', 'vague-torque'],
  [
    ':tighten[Tighten the hose band to the specified torque]{item=band}.',
    'to the specified torque',
    'vague-torque',
  ],
  [
    'Put it together in the reverse order of removal.',
    'in the reverse order of removal',
    'reverse-order',
  ],
  ['Reassemble in reverse order.', 'in reverse order', 'reverse-order'],
];

describe('rules on words', () => {
  it.for(sound)('say nothing to: %s', (step) => {
    expect(wordsFound(step).map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
  });

  it.for(unsound)('find in: %s', ([step, words, rule]) => {
    const found = wordsFound(step).filter((one) => one.rule === rule);
    expect(found.map(({ data }) => data.words)).toEqual([words]);
  });

  it('offer the directive, in its own words, where the thing is named', () => {
    const [found] = wordsFound('Slowly take out the guard bolts.');
    expect(found?.help).toBe('Write `:remove[take out the guard bolts]{item=guard-bolt}`.');
    expect(found?.fix?.edits[0]?.text).toBe(':remove[take out the guard bolts]{item=guard-bolt}');
  });

  it('want work in a panel to be a step, and change nothing there', () => {
    const body =
      ':::warning{hazard="The drum turns" harm="Crushed fingers"}\nPull out the drum pin. Keep your hands away.\n:::\n\n1. Look.';
    const [found, ...more] = wordsFoundIn(body);
    expect([found?.rule, found?.item, found?.fix, more]).toEqual([
      'untracked-action',
      'pin',
      undefined,
      [],
    ]);
    expect(found?.help).toBe(
      'Make it a step of its own: `:withdraw[Pull out the drum pin]{item=pin}`.',
    );
  });

  it('choose the verb that fits the kind of the thing', () => {
    const verbs = [
      'Remove the return hose.',
      'Remove the drum pin.',
      'Fit the belt guard.',
      'Fit the drum pin.',
    ];
    expect(verbs.map((step) => wordsFound(step)[0]?.data.verb)).toEqual([
      'disconnect',
      'withdraw',
      'install',
      'fit',
    ]);
  });

  it('point at the words where lines are indented and signs are escaped', () => {
    const step = 'Wait \\* a moment,\n   &amp; look. Then\n   remove the belt guard.';
    const [found] = wordsFound(step);
    expect(found?.data.words).toBe('remove the belt guard');
    expect(found?.fix?.edits.length).toBe(1);
    expect([found?.start.column, found?.end.column]).toEqual([4, 25]);
  });
});

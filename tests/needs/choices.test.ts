import { describe } from 'vitest';
import { faulty, sound } from './example.ts';

describe('F54 condition on a finding', () => {
  const items = `
parts:
  boot: { name: boot }
`;
  sound('all that follows from it is in its way', {
    items,
    body: '1. :remove{item=boot}\n2. ::::either[the boot is torn]\n   :discard{item=boot}. :install{item=boot new}.\n   ::::\n\n   ::::or[the boot is whole]\n   :install{item=boot}\n   ::::\n',
  });
  const twice =
    '1. :remove{item=boot}\n\n   :::if[the boot is torn]\n   :discard{item=boot}.\n   :::\n2. Wipe the shaft.\n3. Choose the boot:\n\n   ::::either[the boot is torn]\n   :install{item=boot new}.\n   ::::\n\n   ::::or[the boot is whole]\n   :install{item=boot}\n   ::::\n';
  sound('the same finding asked again later has the same answer', { items, body: twice });
  faulty(
    'one way does not bring it back',
    {
      items,
      body: '1. :remove{item=boot}\n\n   :::if[the boot is whole]\n   :install{item=boot}\n   :::\n',
    },
    ['left-out boot'],
  );
});

describe('F55 condition on history or purpose', () => {
  const items = `
parts:
  fan: { name: fan }
`;
  sound('removed only for one purpose, and put back if it was', {
    items,
    body: '1. :::if[the fan is in the way]\n   :remove{item=fan}\n   :::\n2. Look.\n3. :::if[the fan is in the way]\n   :install{item=fan}\n   :::\n',
  });
  sound('with a variant of the work in manual.yaml', {
    items,
    manual: 'variants:\n  purpose: [inspection, overhaul]\n',
    body: '1. :remove{item=fan when="purpose = overhaul"}\n2. Look.\n3. :install{item=fan when="purpose = overhaul"}\n',
  });
  faulty(
    'put back although it was never off',
    { items, body: '1. Look.\n2. :install[Put the fan in if it was removed]{item=fan}.\n' },
    ['in-without-out fan'],
  );
});

describe('F56 loop until a criterion is met', () => {
  const items = `
circuits:
  clutch-fluid: { name: clutch fluid, fluid: DOT 4, capacity: 0.2 L, bleed: at the slave cylinder }
`;
  sound('in words, with a link to the step', {
    items,
    body: '1. :drain{item=clutch-fluid}\n2. :fill{item=clutch-fluid}\n3. Press the pedal down slowly.\n   ::step{#press}\n4. :bleed[Let air out]{item=clutch-fluid}. Repeat from [the pedal](#press) until no bubbles come.\n',
  });
  const seal = 'parts:\n  seal: { name: seal, single-use: true }\n  cap: { name: cap }';
  sound('a block that may be done again', {
    items: seal,
    body: '1. :remove{item=cap}\n\n:::repeat[until the cap does not drip]\n\n2. :remove{item=seal}. :install{item=seal new}\n3. :install{item=cap}. Look for drops. :remove{item=cap}\n\n:::\n\n4. :install{item=cap}\n',
  });
  faulty(
    'steps that cannot be done a second time',
    {
      items: seal,
      body: '1. :remove{item=seal}\n\n:::repeat[until the cap does not drip]\n\n2. :remove{item=cap}. :install{item=seal new}\n3. :install{item=cap}. Look for drops.\n\n:::\n',
    },
    ['in-without-out seal'],
  );
  faulty(
    'in words, with a step number typed',
    { body: '1. Press the pedal.\n2. Repeat steps 1 and 2 until no bubbles come.\n' },
    ['jump-in-words'],
  );
});

describe('F57 go to a step, or the procedure is complete', () => {
  const items = `
parts:
  lid: { name: lid }
  float: { name: float, behind: lid }
`;
  sound('what one way does not do stands in the other', {
    items,
    body: '1. :remove{item=lid}\n2. Look at the float.\n\n   :::::if[the float is stuck]\n   1. :remove{item=float}\n   2. :install{item=float}\n   :::::\n3. :install{item=lid}\n',
  });
  faulty(
    'in words, in the middle of the steps',
    {
      items: 'parts:\n  lid: { name: lid }',
      body: '1. :check{item=lid} If it is tight, the procedure is complete.\n2. :remove{item=lid}. :install{item=lid}\n',
    },
    ['jump-in-words'],
  );
  sound('in words, after the last step', {
    items: 'parts:\n  lid: { name: lid }',
    body: '1. :check{item=lid}\n\nThe procedure is complete.\n',
  });
  faulty(
    'in words',
    {
      items: 'parts:\n  lid: { name: lid }',
      body: '1. :check{item=lid}\n2. If it is tight, go to step 14.\n',
    },
    ['jump-in-words'],
  );
});

import { describe } from 'vitest';
import { faulty, sheet, sound } from './example.ts';

const machine = `machine: mill
name: Mill
fasteners:
  guard-nut: { name: guard nut, count: 2, torque: 10 N·m, holds: guard }
parts:
  guard: { name: guard }
  stone: { name: stone, behind: guard }
`;

const guardOff = sheet(
  'guard-off',
  '1. :remove{item=guard-nut}. :remove{item=guard}\n',
  'leaves: { guard-nut: out, guard: out }\n',
);

const guardOn = sheet(
  'guard-on',
  '1. :install{item=guard}. :install{item=guard-nut}. :torque{item=guard-nut}\n',
  'starts: { guard-nut: out, guard: out }\n',
);

const mill = {
  'machines/mill.yaml': machine,
  'procedures/guard-off.md': guardOff,
  'procedures/guard-on.md': guardOn,
};

const dress =
  '1. ::perform{procedure=guard-off}\n2. :remove{item=stone}. :install{item=stone}\n3. ::perform{procedure=guard-on}\n';

describe('F47 reverse of removal', () => {
  const items = `
fasteners:
  lid-bolt: { name: lid bolt, count: 4, torque: 22 N·m, holds: lid }
parts:
  lid: { name: lid }
  seal: { name: seal, single-use: true, behind: lid }
`;
  const body =
    '## Removal\n\n1. :remove{item=lid-bolt}\n2. :remove{item=lid}\n3. :remove{item=seal}\n\n## Installation\n\n::reverse{of=removal}\n';
  sound('the steps are written, torque and new parts with them', { items, body });
  faulty(
    'one thing is left out of it',
    { items, body: body.replace('of=removal', 'of=removal except=seal') },
    ['left-out seal'],
  );
  faulty(
    'in words, with no steps',
    {
      items: 'parts:\n  screen: { name: screen }',
      body: '## Removal\n\n1. :remove{item=screen}\n\n## Installation\n\nInstallation is the reverse of removal.\n',
    },
    ['left-out screen', 'reverse-order'],
  );
});

describe('F48 order by figure numbers', () => {
  faulty(
    'in numerical sequence, with no steps',
    { body: 'Take the pump apart in the numerical sequence of figure 3.\n' },
    ['jump-in-words'],
  );
  sound('fasteners tightened in the order of their numbers', {
    items: 'fasteners:\n  cap-nut: { name: cap nut, count: 4, torque: 20 N·m }',
    body: '1. :loosen{item=cap-nut} in numerical order.\n2. :torque{item=cap-nut} in the numerical sequence of figure 3.\n',
  });
});

describe('F49 perform another paragraph of the same manual', () => {
  sound('a whole procedure', { body: dress, files: mill });
  const parts = {
    'machines/mill.yaml': machine,
    'procedures/guard.md': sheet(
      'guard',
      '## Off\n\n1. :remove{item=guard-nut}. :remove{item=guard}\n\n## On\n\n1. :install{item=guard}. :install{item=guard-nut}. :torque{item=guard-nut}\n',
    ),
  };
  const body = dress.replace('guard-off', 'guard part=off').replace('guard-on', 'guard part=on');
  sound('one section of a procedure', { body, files: parts });
  faulty('performed once too little', { body: body.replace(/3\. .*\n/, ''), files: parts }, [
    'left-out guard-nut',
    'left-out guard',
  ]);
  faulty(
    'performed twice',
    { body: dress.replace('2. ', '2. ::perform{procedure=guard-off}\n3. '), files: mill },
    ['out-twice guard-nut', 'out-twice guard'],
  );
});

describe('F50 another manual', () => {
  sound('named in the words, or as a web address', {
    body: '1. Grease the bearings as the lubrication order [LO-12](https://example.org/lo-12) says.\n',
  });
});

describe('F51 references broken, doubled or doubtful', () => {
  faulty(
    'a procedure that is not there',
    { body: dress.replace('guard-on', 'guard-back'), files: mill },
    ['unknown-procedure'],
  );
  faulty(
    'a section that is not there',
    {
      body: '1. ::perform{procedure=guard-off part=closing}\n2. :check{item=stone}\n',
      files: {
        'machines/mill.yaml': machine,
        'procedures/guard-off.md': sheet(
          'guard-off',
          '1. :check{item=guard}. :check{item=guard-nut}\n',
        ),
      },
    },
    ['unknown-section'],
  );
  faulty(
    'a link to a step that is not there',
    { body: '1. Look.\n2. Go back to [step 1](#step-one).\n' },
    ['broken-link'],
  );
  faulty(
    'two procedures of one id',
    { body: '1. Look.\n', files: { 'procedures/two.md': sheet('example', '1. Look.\n') } },
    ['duplicate-id'],
  );
});

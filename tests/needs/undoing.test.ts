import { describe } from 'vitest';
import { faulty, sound } from './example.ts';

describe('F20 partial loosening, evenly, a little at a time', () => {
  const items = `
fasteners:
  clamp-bolt: { name: clamp bolt, count: 4, torque: 22 N·m, holds: jaw, lets-go-when: loose }
parts:
  jaw: { name: jaw }
`;
  const body = `1. :loosen[Loosen the 4 clamp bolts evenly, half a turn at a time]{item=clamp-bolt value="1/2 turn"}.
2. :remove[Slide the jaw out]{item=jaw}.
3. :install[Slide the jaw in]{item=jaw}.
4. :torque{item=clamp-bolt}
`;
  sound('loosened, not taken out, and torqued again', { items, body });
  sound('loosened first, then taken out', {
    items,
    body: body
      .replace('\n2.', ' :remove[Then take them out]{item=clamp-bolt}.\n2.')
      .replace('4. ', '4. :install{item=clamp-bolt}. '),
  });
  faulty('left loose', { items, body: body.replace(/4\. .*\n/, '') }, ['left-loose clamp-bolt']);
  faulty(
    'not loosened before the part comes out',
    { items, body: body.replace(/1\. .*\n/, '1. Look at the jaw.\n') },
    ['still-held jaw', 'in-without-out clamp-bolt'],
  );
});

describe('F21 connect and disconnect', () => {
  const items = `
connections:
  fan-plug: { name: fan plug, type: connector, on: fan }
parts:
  fan: { name: fan }
`;
  const body =
    '1. :disconnect{item=fan-plug}\n2. :remove{item=fan}\n3. :install{item=fan}\n4. :connect{item=fan-plug}\n';
  sound('a plug', { items, body });
  faulty('left open', { items, body: body.replace(/4\. .*\n/, '') }, ['left-open fan-plug']);
  faulty(
    'pulled off with its plug on',
    {
      items,
      body: body
        .replace('1. :disconnect{item=fan-plug}\n', '')
        .replace('4. :connect{item=fan-plug}\n', '4. :check{item=fan-plug}\n'),
    },
    ['still-held fan'],
  );
  faulty(
    'a verb that a connection does not have',
    { items, body: body.replace('4. :connect', '4. :install') },
    ['item-unfit fan-plug', 'left-open fan-plug'],
  );
});

describe('F22 open and close, cap and plug', () => {
  const items = `
connections:
  fuel-line: { name: fuel line, type: hose, cap-when-open: true }
controls:
  fuel-cock: { name: fuel cock, positions: [open, shut], home: open }
`;
  const body = `1. :set[Shut the fuel cock]{item=fuel-cock to=shut}.
2. :disconnect{item=fuel-line}
3. :cap{item=fuel-line}
4. Rinse the bowl.
5. :uncap{item=fuel-line}. :connect{item=fuel-line}
6. :set[Open the fuel cock]{item=fuel-cock to=open}.
`;
  sound('shut, capped, and the way back', { items, body });
  faulty(
    'never capped',
    { items, body: body.replace(/3\. .*\n/, '3. Wait.\n').replace(':uncap{item=fuel-line}. ', '') },
    ['left-uncapped fuel-line'],
  );
  faulty(
    'connected with the cap on',
    { items, body: body.replace(':uncap{item=fuel-line}. ', '') },
    ['state-unfit fuel-line'],
  );
  faulty('the cock stays shut', { items, body: body.replace(/6\. .*\n/, '') }, [
    'control-away fuel-cock',
  ]);
});

describe('F23 set and release', () => {
  const items = `
controls:
  hand-brake: { name: hand brake, positions: [set, released], home: set }
`;
  const body =
    '1. :set[Release the hand brake]{item=hand-brake to=released}.\n2. Turn the wheel.\n3. :set[Set the hand brake]{item=hand-brake to=set}.\n';
  sound('released for the work, then set', { items, body });
  faulty('left released', { items, body: body.replace(/3\. .*\n/, '') }, [
    'control-away hand-brake',
  ]);
  faulty(
    'released twice',
    { items, body: body.replace('2. Turn', '2. :set{item=hand-brake to=released}. Turn') },
    ['out-twice hand-brake'],
  );
});

describe('F84 one at a time', () => {
  const items = `
fasteners:
  rod-nut: { name: rod nut, count: 2, torque: 30 N·m }
`;
  sound('one after the other, in steps of their own', {
    items,
    body: '1. :loosen[Loosen one rod nut]{item=rod-nut qty=1}. :torque[Torque it again]{item=rod-nut qty=1}.\n2. :loosen[Loosen the other rod nut]{item=rod-nut qty=1}. :torque[Torque it again]{item=rod-nut qty=1}.\n',
  });
  const caps = {
    items: items.replace('torque: 30', 'each: [front, rear], most-undone: 1, torque: 30'),
    body: '1. :loosen[Loosen one rod nut at each end]{item=rod-nut qty=1}. :remove[Take it off]{item=rod-nut qty=1}.\n2. :install[Put it on]{item=rod-nut qty=1}. :torque{item=rod-nut qty=1}\n',
  };
  sound('one at each end, loosened and then taken off', caps);
  faulty(
    'a second one at the front',
    {
      ...caps,
      body: caps.body.replace('2. ', '2. :loosen{item=rod-nut qty=1 each=front}. '),
    },
    ['too-many-undone rod-nut', 'never-torqued rod-nut'],
  );
  faulty(
    'two are loose at the same time where the catalogue allows one',
    {
      items: items.replace('torque: 30', 'most-undone: 1, torque: 30'),
      body: '1. :loosen{item=rod-nut}\n2. :torque{item=rod-nut}\n',
    },
    ['too-many-undone rod-nut'],
  );
});

import { describe } from 'vitest';
import { faulty, sheet, sound } from './example.ts';

describe('F08 call-out numbers belong to a figure', () => {
  const items = `
fasteners:
  cap-screw: { name: cap screw, count: 3, torque: 9 N·m }
  lid-screw: { name: lid screw, count: 3, torque: 9 N·m }
`;
  const body = `:::figure{src="../figures/cap.svg" alt="Cap with 3 screws"}
Figure 1
:::

1. :loosen[Loosen the 3 cap screws (4)]{item=cap-screw}.
2. :torque[Torque the cap screws (4)]{item=cap-screw}.

:::figure{src="../figures/lid.svg" alt="Lid with 3 screws"}
Figure 2
:::

3. :loosen[Loosen the 3 lid screws (4)]{item=lid-screw}.
4. :torque[Torque the lid screws (7)]{item=lid-screw}.
`;
  const pictures = ['figures/cap.svg', 'figures/lid.svg'];
  sound('the same number for two things, two numbers for one', { items, body, pictures });
  faulty(
    'pairs go by identity: another thing with the same number does not answer for it',
    { items, pictures, body: body.replace(/\{item=lid-screw\}\.\n$/, '{item=cap-screw}.\n') },
    ['left-loose lid-screw'],
  );
});

describe('F09 one item under several nouns', () => {
  const items = `
fasteners:
  gland-nut: { name: gland nut, tightness: snug, also-called: [packing nut] }
`;
  sound('the words may differ where the identity is the same', {
    items,
    body: '1. :loosen[Loosen the gland nut]{item=gland-nut}.\n2. :tighten[Tighten the packing nut]{item=gland-nut}.\n',
  });
  faulty(
    'work on it under the other noun is seen',
    { items, body: '1. :check{item=gland-nut}.\n2. Loosen the packing nut.\n' },
    ['untracked-action gland-nut'],
  );
});

describe('F10 quantity as a word, a plural without number, or missing', () => {
  const items = `
fasteners:
  flange-bolt: { name: flange bolt, count: 6, torque: 45 N·m }
`;
  sound('no number means all that are left', {
    items,
    body: '1. :remove[Take out two flange bolts]{item=flange-bolt qty=2}.\n2. :remove[Take out the other flange bolts]{item=flange-bolt}.\n3. :install[Put in the flange bolts]{item=flange-bolt}.\n4. :torque{item=flange-bolt}\n',
  });
  faulty(
    'fewer go back than came out',
    {
      items,
      body: '1. :remove{item=flange-bolt}\n2. :install[Put in four flange bolts]{item=flange-bolt qty=4}. :torque{item=flange-bolt}\n',
    },
    ['left-out flange-bolt'],
  );
  faulty(
    'more are taken out than there are',
    {
      items,
      body: '1. :remove{item=flange-bolt qty=8}\n2. :install{item=flange-bolt}. :torque{item=flange-bolt}\n',
    },
    ['count-mismatch flange-bolt'],
  );
  faulty(
    'a number in the words that is not the count',
    {
      items,
      body: '1. :loosen[Loosen the four flange bolts]{item=flange-bolt}.\n2. :torque{item=flange-bolt}\n',
    },
    ['count-in-words flange-bolt'],
  );
});

describe('F11 a fastener stack acted on as one', () => {
  const items = `
fasteners:
  foot-screw: { name: foot screw, count: 4, torque: 22 N·m, stack: [lock washer, flat washer] }
`;
  sound('washers go with their screw', {
    items,
    body: '1. :remove[Take out 4 foot screws with their washers]{item=foot-screw}.\n2. :install{item=foot-screw}. :torque{item=foot-screw}\n',
  });
  const split = `
fasteners:
  foot-screw: { name: foot screw, count: 4, torque: 22 N·m, stack: [flat washer] }
  lock-washer: { name: lock washer, count: 4, single-use: true, tightness: hand-tight }
`;
  const body =
    '1. :remove{item=foot-screw}. :remove{item=lock-washer}\n2. :install{item=lock-washer new}. :install{item=foot-screw}. :torque{item=foot-screw}\n';
  sound('a member that is thrown away is an entry of its own', { items: split, body });
  faulty('its old piece goes back', { items: split, body: body.replace(' new', '') }, [
    'old-part-back lock-washer',
  ]);
});

describe('F12 assemblies and part-of', () => {
  const items = `
fasteners:
  pump-bolt: { name: pump bolt, count: 2, torque: 22 N·m, holds: pump }
  elbow-nut: { name: elbow nut, torque: 15 N·m, holds: elbow, in: pump }
parts:
  pump: { name: pump }
  elbow: { name: elbow, in: pump }
`;
  const bench = `1. :remove{item=pump-bolt}
2. :remove{item=pump}
3. On the bench, :remove{item=elbow-nut} and :remove{item=elbow}
4. :install{item=elbow}. :install{item=elbow-nut}. :torque{item=elbow-nut}
5. :install{item=pump}
6. :install{item=pump-bolt}. :torque{item=pump-bolt}
`;
  sound('taken apart on the bench, back inside the assembly', { items, body: bench });
  faulty(
    'the assembly goes back without its part',
    { items, body: bench.replace(/4\. .*\n/, '4. Rinse the pump.\n') },
    ['left-out elbow-nut', 'left-out elbow'],
  );
  const moved = bench
    .replace('5. :install{item=pump}', '5. :discard{item=pump}. :install{item=pump new}')
    .replace('On the bench', 'From the old pump');
  sound('a part moved over to the new assembly', { items, body: moved });
  sound('the new assembly brings the part along: the old one is thrown away with its own', {
    items,
    body: moved.replace(
      /4\. .*\n/,
      '4. :discard{item=elbow}. :replace{item=elbow}. :install{item=elbow-nut}. :torque{item=elbow-nut}\n',
    ),
  });
});

describe('F13 two of one item in separate steps', () => {
  const items = `
parts:
  cup: { name: cup, count: 2, single-use: true }
`;
  const body =
    '1. :remove{item=cup}\n2. :install[Slide the first new cup on, lip up]{item=cup qty=1 new}.\n3. :install[Slide the second new cup on, lip down]{item=cup qty=1 new}.\n';
  sound('counted piece by piece', { items, body });
  faulty('the second is forgotten', { items, body: body.replace(/3\. .*\n/, '') }, [
    'left-out cup',
  ]);
});

describe('F14 do not remove', () => {
  const items = `
fasteners:
  dowel: { name: dowel, count: 2, tightness: hand-tight }
parts:
  shim: { name: shim }
`;
  sound('a prohibition is no action', {
    items,
    body: '1. Do not remove the dowels. :check[Look at the 2 dowels]{item=dowel}.\n2. Never remove the shim. :check{item=shim}\n',
  });
  sound('unless the technician finds a fault', {
    items,
    body: '1. Do not remove the shim unless it is bent. :check{item=shim}\n\n   :::if[the shim is bent]\n   :replace[Put in a new shim]{item=shim}.\n   :::\n2. :check{item=dowel}\n',
  });
});

describe('F15 tag or mark the position, and take the tags off', () => {
  const items = `
connections:
  sense-hose: { name: sense hose, count: 3, type: hose }
aids:
  tag: { name: tag, count: 3 }
`;
  const body =
    '1. :fit[Tag each sense hose]{item=tag}.\n2. :disconnect{item=sense-hose}\n3. :connect[Connect the sense hoses by their tags]{item=sense-hose}.\n4. :withdraw[Take the tags off]{item=tag}.\n';
  sound('a tag is an aid', { items, body });
  faulty('a tag stays in the machine', { items, body: body.replace(/4\. .*\n/, '') }, [
    'aid-left-in tag',
  ]);
});

describe('F64 more is replaced than the item', () => {
  const items = `
parts:
  bearing: { name: bearing, single-use: true }
  bearing-cup: { name: bearing cup, single-use: true, behind: bearing }
`;
  const body =
    '1. :remove{item=bearing}\n2. :remove{item=bearing-cup}\n3. :install{item=bearing-cup new}\n4. :install{item=bearing new}\n';
  sound('both are single-use where both always go together', { items, body });
  faulty('the old cup goes back', { items, body: body.replace('cup new', 'cup') }, [
    'old-part-back bearing-cup',
  ]);
  const pair =
    'parts:\n  chain: { name: chain, renew-with: [sprocket] }\n  sprocket: { name: sprocket }';
  faulty(
    'one of a matched set comes in new and the other stays',
    {
      items: pair,
      body: '1. :replace[Lay a new chain on]{item=chain}.\n2. :check{item=sprocket}\n',
    },
    ['not-renewed sprocket'],
  );
  sound('both are renewed', {
    items: pair,
    body: '1. :replace[Put a new sprocket on]{item=sprocket}.\n2. :replace[Lay a new chain on]{item=chain}.\n',
  });
  sound('renewed by another procedure of the same job', {
    body: '1. ::perform{procedure=sprocket-new}\n2. :replace[Lay a new chain on]{item=chain}.\n',
    files: {
      'machines/hoist.yaml': `machine: hoist\nname: Hoist\n${pair}\n`,
      'procedures/sprocket-new.md': sheet('sprocket-new', '1. :replace{item=sprocket}\n'),
    },
  });
  sound('no machine has both', {
    items: pair
      .replace('[sprocket] }', '[sprocket], when: drive = chain }')
      .replace('name: sprocket }', 'name: sprocket, when: drive = belt }'),
    manual: 'variants:\n  drive: [chain, belt]\n',
    body: '1. :replace{item=chain when="drive = chain"}.\n2. :check{item=sprocket when="drive = belt"}.\n',
  });
});

describe('F78 part of a set', () => {
  const items = `
fasteners:
  rim-nut: { name: rim nut, count: 28, torque: 22 N·m }
`;
  const body =
    '1. :loosen[Loosen one rim nut]{item=rim-nut qty=1}.\n2. :remove[Take off the remaining 27 rim nuts]{item=rim-nut qty=27}.\n3. :remove[Take off the last rim nut]{item=rim-nut qty=1}.\n4. :install{item=rim-nut}. :torque{item=rim-nut}\n';
  sound('one, then the remaining 27', { items, body });
  faulty(
    'then the remaining 28',
    { items, body: body.replace('qty=27', 'qty=28').replace('27', '28') },
    ['out-twice rim-nut'],
  );
});

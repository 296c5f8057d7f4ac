import { describe } from 'vitest';
import { faulty, sheet, sound } from './example.ts';

describe('F52 variants by model, serial range, kit', () => {
  const items = `
parts:
  hood: { name: hood }
  muff: { name: muff, when: kit = winter }
`;
  const manual = 'variants:\n  kit: [plain, winter]\n  serial: [up-to-4999, from-5000]\n';
  const body = `1. :remove{item=muff}
   ::step{when="kit = winter"}
2. :remove{item=hood}
3. :install{item=hood}
4. :install{item=muff when="kit = winter"}
`;
  sound('each side for the same variants', {
    items,
    manual,
    body: `${body}5. Look at the label.\n   ::step{when="serial = from-5000"}\n`,
  });
  faulty(
    'one side for fewer',
    {
      items,
      manual,
      body: body.replace(
        'item=muff when="kit = winter"',
        'item=muff when="kit = winter & serial = from-5000"',
      ),
    },
    ['left-out muff'],
  );
  faulty(
    'an item that the variant does not have',
    { items, manual, body: body.replace('\n   ::step{when="kit = winter"}', '') },
    ['item-absent muff'],
  );
  faulty(
    'a value that there is none of',
    {
      items,
      manual,
      body: body.replace('item=muff when="kit = winter"', 'item=muff when="kit = summer"'),
    },
    ['condition-wrong'],
  );
});

describe('F53 condition by position', () => {
  const items = `
parts:
  pad: { name: pad, each: [left, right] }
`;
  const body =
    '1. :remove[Take the left pad out]{item=pad each=left}. :install[Put the left pad in]{item=pad each=left}.\n2. :remove[Take the right pad out]{item=pad each=right}. :install[Put the right pad in]{item=pad each=right}.\n';
  sound('one side, then the other', { items, body });
  faulty(
    'the other side is forgotten',
    { items, body: body.replace(/ :install\[Put the right.*/, '') },
    ['left-out pad'],
  );
  faulty('a side that there is not', { items, body: body.replaceAll('each=right', 'each=rear') }, [
    'unknown-state pad',
    'unknown-state pad',
  ]);
  const hubs = `
fasteners:
  hub-nut: { name: hub nut, torque: 90 N·m, holds: hub, each: [left, right] }
parts:
  hub: { name: hub, each: [left, right] }
`;
  const left =
    '1. :remove{item=hub-nut each=left}. :remove{item=hub each=left}\n2. :install{item=hub each=left}. :install{item=hub-nut each=left}. :torque{item=hub-nut each=left}\n';
  sound('the left hub is held by the left nut alone', { items: hubs, body: left });
  faulty(
    'the right nut does not let the left hub go',
    {
      items: hubs,
      body: left
        .replace(':remove{item=hub-nut each=left}', ':remove{item=hub-nut each=right}')
        .replace(
          ':install{item=hub-nut each=left}. :torque{item=hub-nut each=left}',
          ':install{item=hub-nut each=right}. :torque{item=hub-nut each=right}',
        ),
    },
    ['still-held hub'],
  );
});

const wheel = `
fasteners:
  wheel-nut: { name: wheel nut, count: 5, torque: 90 N·m, holds: wheel, each: [left, right] }
parts:
  wheel: { name: wheel, each: [left, right] }
`;

describe('F58 repeat steps for the others', () => {
  const body =
    '1. :remove{item=wheel-nut}. :remove[Take both wheels off]{item=wheel}.\n2. :install[Put both wheels on]{item=wheel}. :install{item=wheel-nut}\n3. :torque{item=wheel-nut}\n';
  sound('each instance carries every obligation', { items: wheel, body });
  faulty(
    'one side is not torqued',
    {
      items: wheel,
      body: body.replace('3. :torque{item=wheel-nut}', '3. :torque{item=wheel-nut each=left}'),
    },
    ['never-torqued wheel-nut'],
  );
  const other =
    '## Left\n\n1. :remove{item=wheel-nut each=left}. :remove{item=wheel each=left}\n2. :install{item=wheel each=left}. :install{item=wheel-nut each=left}. :torque{item=wheel-nut each=left}\n\n## Right\n\n1. ';
  sound('a section performed for the other side', {
    items: wheel,
    body: `${other}::perform{procedure=example part=left each=right}\n`,
  });
  const apart = {
    'machines/cart.yaml': `machine: cart\nname: Cart\n${wheel.trim()}\n`,
    'procedures/left-wheel.md': sheet(
      'left-wheel',
      '1. :remove{item=wheel-nut each=left}. :remove{item=wheel each=left}\n2. :install{item=wheel each=left}. :install{item=wheel-nut each=left}. :torque{item=wheel-nut each=left}\n',
    ),
  };
  sound('a whole procedure performed for the other side', {
    files: apart,
    body: '1. ::perform{procedure=left-wheel}\n2. ::perform{procedure=left-wheel each=right}\n',
  });
  faulty(
    'a wheel that is off on the other side is told where the procedure is performed for it',
    {
      files: apart,
      body: '1. :remove{item=wheel-nut each=right}\n2. ::perform{procedure=left-wheel each=right}\n',
    },
    ['out-twice wheel-nut'],
  );
  sound('a wheel that is off on the other side is none of its business', {
    files: apart,
    body: '1. :remove{item=wheel-nut each=right}\n2. ::perform{procedure=left-wheel}\n3. :install{item=wheel-nut each=right}. :torque{item=wheel-nut each=right}\n',
  });
  faulty(
    'performed for the other side, what goes wrong there',
    {
      items: wheel,
      body: `${other}:loosen{item=wheel-nut each=right}\n2. :remove{item=wheel-nut each=right}\n3. ::perform{procedure=example part=left each=right}\n`,
    },
    ['out-twice wheel-nut'],
  );
  faulty(
    'a side that there is not',
    { items: wheel, body: `${other}::perform{procedure=example part=left each=rear}\n` },
    ['unknown-state wheel-nut'],
  );
  faulty('in words', { items: wheel, body: `${other}Do the same for the right wheel.\n` }, [
    'jump-in-words',
  ]);
});

describe('F59 the same for all', () => {
  sound('a typical task with each', {
    items: wheel,
    body: '1. For each wheel: :loosen{item=wheel-nut} and :torque{item=wheel-nut}\n2. :check{item=wheel}\n',
  });
  faulty(
    'a right wheel nut stops a right wheel, and so on',
    {
      items: wheel,
      body: '1. :remove{item=wheel-nut each=left}\n2. :remove{item=wheel}\n3. :install{item=wheel}. :install{item=wheel-nut each=left}. :torque{item=wheel-nut each=left}\n',
    },
    ['still-held wheel'],
  );
});

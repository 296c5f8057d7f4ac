import { describe, expect, test } from 'vitest';
import { faulty, sound, stepsOf } from './example.ts';

describe('F27 orientation and alignment', () => {
  const items = `
parts:
  cup: { name: cup }
`;
  sound('in the words of the step', {
    items,
    body: '1. :remove{item=cup}\n2. :install[Slide the cup on with its lip towards the rod]{item=cup}.\n',
  });
  test('the sheet prints facing in the catalogue wherever the part goes in', () => {
    const [out, back] = stepsOf({
      items: 'parts:\n  cup: { name: cup, facing: lip towards the rod }',
      body: '1. :remove{item=cup}\n2. :install{item=cup}\n',
    });
    expect(out?.facing).toEqual([]);
    expect(back?.facing).toMatchObject([{ item: { id: 'cup', facing: 'lip towards the rod' } }]);
  });
});

describe('F28 direction of rotation', () => {
  const items = `
fasteners:
  hub-nut: { name: hub nut, thread: M20 LH, torque: 90 N·m }
`;
  sound('in the words of the step', {
    items,
    body: '1. :loosen[Turn the hub nut clockwise: it has a left-hand thread]{item=hub-nut}.\n2. :torque[Torque the hub nut, anticlockwise]{item=hub-nut}.\n',
  });
});

describe('F29 grease, sealant or tape before the joining step', () => {
  const items = `
fasteners:
  plug: { name: plug, torque: 15 N·m }
consumables:
  thread-sealant: { name: thread sealant }
`;
  sound('an action of its own', {
    items,
    body: '1. :remove{item=plug}\n2. :apply[Coat the thread of the plug]{item=thread-sealant}.\n3. :install{item=plug}. :torque{item=plug}\n',
  });
  const coated =
    'fasteners:\n  plug: { name: plug, torque: 15 N·m, coat: [thread-sealant] }\nconsumables:\n  thread-sealant: { name: thread sealant }';
  const joined = {
    items: coated,
    body: '1. :remove{item=plug}\n2. :install{item=plug}. :torque{item=plug}\n',
  };
  sound('in the catalogue', joined);
  test('the sheet prints the coat wherever the plug goes in', () => {
    const [out, back] = stepsOf(joined);
    expect(out?.consumables).toEqual([]);
    expect(back?.consumables.map(({ item }) => item.id)).toEqual(['thread-sealant']);
  });
  faulty(
    'a coat that is no consumable',
    { ...joined, items: coated.replace('[thread-sealant]', '[plug]') },
    ['item-unfit plug', 'unused-entry thread-sealant'],
  );
});

describe('F81 a tool named in the step', () => {
  const items = `
fasteners:
  line-nut: { name: line nut, torque: 18 N·m }
tools:
  crowfoot: { name: crowfoot wrench, size: 14 mm }
`;
  const body = '1. :loosen{item=line-nut with=crowfoot}\n2. :torque{item=line-nut with=crowfoot}\n';
  sound('with the action; it is printed beside the step', { items, body });
  faulty(
    'one that is not in the catalogue',
    { items, body: body.replaceAll('crowfoot', 'crow-foot') },
    ['unknown-item', 'unknown-item', 'unused-entry crowfoot'],
  );
  faulty(
    'something that is no tool',
    { items, body: body.replace('with=crowfoot', 'with=line-nut') },
    ['item-unfit line-nut'],
  );
});

describe('F82 make sure', () => {
  const items = `
controls:
  gear-lever: { name: gear lever, positions: [neutral, first], home: neutral }
`;
  sound('a check', {
    items,
    body: '1. :check[Make sure that the gear lever is in neutral]{item=gear-lever}.\n',
  });
  faulty(
    'it is not what the steps have led to',
    {
      items,
      body: '1. :set{item=gear-lever to=first}\n2. :check[Make sure that the gear lever is in neutral]{item=gear-lever to=neutral}.\n3. :set{item=gear-lever to=neutral}\n',
    },
    ['state-unfit gear-lever'],
  );
});

describe('F85 optional step', () => {
  const items = `
parts:
  filter: { name: filter }
`;
  sound('a way that may be taken', {
    items,
    body: '1. :check{item=filter}\n\n   :::if[the filter is clogged]\n   :replace[Put in a new filter]{item=filter}.\n   :::\n',
  });
  faulty(
    'the optional way does not balance',
    {
      items,
      body: '1. :check{item=filter}\n\n   :::if[it is in the way]\n   :remove{item=filter}\n   :::\n',
    },
    ['left-out filter'],
  );
});

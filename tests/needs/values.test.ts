import { describe, expect, test } from 'vitest';
import { makeBook } from '../../src/render/index.ts';
import { faulty, found, type Page, sound } from './example.ts';

/** A bolt with a torque, loosened and torqued. */
const bolt = (members: string, torque: string): Page => ({
  items: `fasteners:\n  head-bolt: { name: head bolt, count: 4, ${members} }`,
  body: `1. :loosen{item=head-bolt}\n2. ${torque}\n`,
});

const loosen = ':torque{item=head-bolt}';

describe('F34 torque as a value or a range, second unit in brackets', () => {
  sound('a value', bolt('torque: 22 N·m', loosen));
  sound('a range', bolt('torque: 20..24 N·m', loosen));
  sound('a tolerance', bolt('torque: 22 ±2 N·m', loosen));
  // 22 N·m = 16.2 lbf·ft by 1 lbf·ft = 1.3558179483 N·m (NIST SP 811, appendix B.8).
  sound(
    'both units in the words',
    bolt('torque: 22 N·m', ':torque[Torque to 22 N·m (16 lbf·ft)]{item=head-bolt}'),
  );
  faulty(
    'another figure than the catalogue gives',
    bolt('torque: 22 N·m', ':torque[Torque to 25 N·m]{item=head-bolt}'),
    ['torque-disagrees head-bolt'],
  );
  faulty(
    'a bracket that does not go with its figure',
    bolt('torque: 22 N·m', ':torque[Torque to 22 N·m (19 lbf·ft)]{item=head-bolt}'),
    ['pair-disagrees', 'torque-disagrees head-bolt'],
  );
});

describe('F35 several families of torque units in one task', () => {
  const page = {
    items:
      'fasteners:\n  a-bolt: { name: long bolt, torque: 22 N·m }\n  b-bolt: { name: short bolt, torque: 25 N·m }',
    manual: 'units: { torque: [N·m, lbf·ft] }\n',
    body: '1. :loosen{item=a-bolt}. :loosen{item=b-bolt}\n2. :torque{item=a-bolt}. :torque{item=b-bolt}\n',
  };
  sound('one first unit, one second', page);
  faulty(
    'a third in the words',
    {
      ...page,
      body: page.body.replace(
        '. :torque{item=b-bolt}',
        '. :torque[Torque to 221 lbf·in]{item=b-bolt}',
      ),
    },
    ['units-mixed'],
  );
});

describe('F36 torque in stages', () => {
  sound(
    'rising passes',
    bolt('torque: [20 N·m, 40 N·m, 60 N·m]', ':torque[Torque in three stages]{item=head-bolt}'),
  );
  sound('seat, back off, final', bolt('torque: [100 N·m, back off 1 turn, 30 N·m]', loosen));
  sound(
    'stages in steps of their own, the last one torques',
    bolt(
      'torque: [20 N·m, 60 N·m]',
      ':torque[Torque to 20 N·m]{item=head-bolt}\n3. :torque[Torque to 60 N·m]{item=head-bolt}',
    ),
  );
  faulty(
    'a stage that is none of the catalogue',
    bolt('torque: [20 N·m, 60 N·m]', ':torque[Torque to 45 N·m]{item=head-bolt}'),
    ['torque-disagrees head-bolt'],
  );
  faulty(
    'only the first stage is done',
    bolt('torque: [20 N·m, 60 N·m]', ':torque[Torque to 20 N·m]{item=head-bolt}'),
    ['never-torqued head-bolt'],
  );
  sound(
    'both stages in one sentence',
    bolt('torque: [20 N·m, 60 N·m]', ':torque[Torque to 20 N·m, then to 60 N·m]{item=head-bolt}'),
  );
  sound(
    'the first stage named, and that there are more',
    bolt(
      'torque: [20 N·m, 60 N·m]',
      ':torque[Torque in stages, beginning with 20 N·m]{item=head-bolt}',
    ),
  );
  sound(
    'a torque and the turn after it',
    bolt('torque: [30 N·m, 90°]', ':torque[Torque to 30 N·m and turn on by 90°]{item=head-bolt}'),
  );
});

describe('F37 tighten until a slot or hole lines up', () => {
  sound('a range leaves room for it, and the pin is new', {
    items:
      'fasteners:\n  castle-nut: { name: castle nut, torque: 40..60 N·m }\n  split-pin: { name: split pin, single-use: true, tightness: hand-tight, behind: [] }'.replace(
        ', behind: []',
        '',
      ),
    body: '1. :remove{item=split-pin}. :loosen{item=castle-nut}\n2. :torque[Torque the castle nut, then on to the next slot within the range]{item=castle-nut}.\n3. :install[Push a new split pin through]{item=split-pin new}.\n',
  });
});

describe('F38 tightness without a figure', () => {
  const tighten = ':tighten{item=head-bolt}';
  sound('snug', bolt('tightness: snug', ':tighten[Tighten until snug]{item=head-bolt}'));
  sound(
    'until drag',
    bolt('tightness: until-drag', ':tighten[Tighten until the shaft drags]{item=head-bolt}'),
  );
  sound(
    'hand-tight',
    bolt('tightness: hand-tight', ':tighten[Tighten by hand, evenly]{item=head-bolt}'),
  );
  faulty('nothing says how tight', bolt('thread: M8', tighten), ['torque-missing head-bolt']);
  faulty(
    'a vague word in its place',
    bolt('thread: M8', ':tighten[Tighten securely]{item=head-bolt}'),
    ['torque-missing head-bolt', 'vague-torque head-bolt'],
  );
  const nipple = {
    items: 'connections:\n  nipple: { name: nipple, type: pipe, torque: 12 N·m }',
    body: '1. :disconnect{item=nipple}\n2. :connect{item=nipple}\n',
  };
  faulty('a connection with a torque that is made and never torqued', nipple, [
    'never-torqued nipple',
  ]);
});

describe('F39 torque by table or to specification', () => {
  const rule = 'default-torques:\n  - { thread: M8, class: 8.8, torque: 22 N·m }\n';
  sound('a rule by thread and class, printed as a figure', {
    ...bolt('thread: M8, class: 8.8', loosen),
    manual: rule,
  });
  faulty(
    'to specification, and there is none',
    bolt(
      'thread: M8, class: 8.8',
      ':torque[Torque the head bolts to specification]{item=head-bolt}',
    ),
    ['torque-missing head-bolt', 'vague-torque head-bolt'],
  );
});

describe('F40 hold one part, check torque, turning torque', () => {
  const items =
    'fasteners:\n  jam-nut: { name: jam nut, torque: 30 N·m }\nparts:\n  spindle: { name: spindle }';
  sound('holding in words, turning torque as a reading', {
    items,
    body: '1. :loosen[Loosen the jam nut while you hold the spindle]{item=jam-nut}.\n2. :torque[Torque the jam nut while you hold the spindle]{item=jam-nut}.\n3. :measure[Measure the turning torque]{item=spindle value="1..2 N·m"}.\n',
  });
  sound('a check of the torque changes nothing', {
    items,
    body: '1. :check[Check the torque of the jam nut]{item=jam-nut value="30 N·m"}.\n2. :check{item=spindle}\n',
  });
  faulty(
    'torqued although nothing undid it',
    { items, body: '1. :torque{item=jam-nut}\n2. :check{item=spindle}\n' },
    ['in-without-out jam-nut'],
  );
});

describe('F41 tightening order', () => {
  sound(
    'a pattern in the catalogue, drawn on the sheet',
    bolt('torque: 22 N·m, pattern: { circle: 4 }', loosen),
  );
  faulty('a pattern for another number', bolt('torque: 22 N·m, pattern: { circle: 6 }', loosen), [
    'pattern-count',
  ]);
});

describe('F42 fractions of a turn', () => {
  sound('back off by a fraction', bolt('torque: [30 N·m, back off 1/4 turn]', loosen));
  sound('torque and angle', bolt('torque: 30 N·m + 90°', loosen));
  faulty('a turn with a minus', bolt('torque: [30 N·m, -1/4 turn]', loosen), ['unit-unknown']);
});

const gap = (value: string, words = 'Measure the gap'): Page => ({
  items: 'parts:\n  gate: { name: gate }',
  manual: 'units: { length: [mm, in], pressure: [bar, psi], temperature: [°C, °F] }\n',
  body: `1. :measure[${words}]{item=gate value="${value}"}.\n`,
});

describe('F43 clearance or size with tolerance', () => {
  sound('a range', gap('0.2..0.4 mm'));
  sound('a tolerance', gap('12.0 ±0.1 mm'));
  sound('a limit', gap('max 0.3 mm'));
  faulty('a range upside down', gap('0.4..0.2 mm'), ['unit-unknown']);
  faulty(
    'in a unit of another kind',
    { ...gap('0.3 mm'), body: '1. :measure{item=gate value="0.3 mm"}.\n2. The gap is 0.01 ft.\n' },
    ['units-mixed'],
  );
});

describe('F44 pressure, temperature, time', () => {
  const page = (text: string): Page => ({
    manual: 'units: { pressure: [bar, psi], temperature: [°C, °F] }\n',
    body: `1. ${text}\n`,
  });
  sound(
    'in the units of the manual',
    page('Wait 10 min until the gauge reads 2 bar and the oil has 40 °C.'),
  );
  faulty('in others', page('Wait until the gauge reads 200 kPa.'), ['units-mixed']);
  faulty('a time that is a length', { body: '1. Wait.\n   ::step{time="10 mm"}\n' }, ['unit-kind']);
});

describe('F45 printed pairs that disagree', () => {
  // 1 in = 25.4 mm exactly (NIST SP 811, appendix B.8): 0.3 mm = 0.012 in.
  sound('a pair that agrees', { ...gap('0.3 mm', 'The gap must be 0.3 mm (0.012 in)') });
  faulty('a pair that does not', { ...gap('0.3 mm', 'The gap must be 0.3 mm (0.12 in)') }, [
    'pair-disagrees',
  ]);
});

describe('F46 a default rule elsewhere', () => {
  const rule = 'default-torques:\n  - { thread: M10, class: 8.8, torque: 45 N·m }\n';
  sound('it gives the torque', { ...bolt('thread: M10, class: 8.8', loosen), manual: rule });
  faulty(
    'it does not speak of this thread',
    { ...bolt('thread: M12, class: 8.8', ':torque{item=head-bolt}'), manual: rule },
    ['torque-missing head-bolt'],
  );
  faulty(
    'the words disagree with it',
    {
      ...bolt('thread: M10, class: 8.8', ':torque[Torque to 40 N·m]{item=head-bolt}'),
      manual: rule,
    },
    ['torque-disagrees head-bolt'],
  );
});

describe('F62 check again later', () => {
  const page = bolt('torque: 22 N·m', loosen);
  sound('a procedure of its own, with its interval', {
    ...page,
    body: `${page.body}3. After 24 h, continue with [the check](check.md).\n`,
    files: {
      'procedures/check.md':
        '---\nprocedure: check\ntitle: Check the torque\ninterval: 24 h after the head bolts were torqued\nitems:\n  fasteners:\n    head-bolt: { name: head bolt, count: 4, torque: 22 N·m }\n---\n\n1. :check[Check the torque of the head bolts]{item=head-bolt value="22 N·m"}.\n',
    },
  });
  faulty(
    'the catalogue asks for it, and no procedure checks it',
    bolt('torque: 22 N·m, check-again: after 24 h', loosen),
    ['never-rechecked head-bolt'],
  );
  test('the sheet says so beside the torque', () => {
    const { linked, report } = found(bolt('torque: 22 N·m, check-again: after 24 h', loosen));
    const [only] = makeBook(linked, report, { draft: true }).sheets;
    expect(only?.bodyHtml).toContain('Check again after 24\u00a0h');
  });
  faulty(
    'a check right after it was torqued is not a later one',
    bolt('torque: 22 N·m, check-again: after 24 h', `${loosen}. :check{item=head-bolt}`),
    ['never-rechecked head-bolt'],
  );
});

import { describe, expect, test } from 'vitest';
import { check, found, onePage, told } from '../support/manual.ts';

/** An invented gearbox: cover on bolts, behind a guard; a drain plug; a vent hose on the cover. */
const gearbox = `
fasteners:
  cover-bolt: { name: cover bolt, count: 6, torque: 22 N·m, holds: cover }
  guard-screw: { name: guard screw, count: 4, tightness: snug, holds: guard }
  drain-plug: { name: drain plug, torque: 40 N·m }
  pin: { name: split pin, count: 2, single-use: true, tightness: hand-tight }
parts:
  guard: { name: guard }
  cover: { name: cover, behind: guard }
  gasket: { name: gasket, single-use: true, behind: cover }
  wheel: { name: wheel, behind: [cover] }
connections:
  vent: { name: vent hose, type: hose, on: cover }
  feed: { name: feed pipe, type: pipe, circuit: oil, cap-when-open: true }
circuits:
  oil: { name: gear oil, fluid: gear oil, capacity: 2 L, drain: drain-plug }
  brake: { name: brake fluid, fluid: brake fluid, capacity: 1 L, bleed: at the nipple, pressure: true }
energy:
  battery: { name: battery, type: electrical, isolate-before: [wheel] }
controls:
  gear-lever: { name: gear lever, positions: [neutral, first], home: neutral }
aids:
  stand: { name: stand, count: 2 }
  lock-pin: { name: lock pin, blocks: cover }
`;

const opening = `
1. :isolate{item=battery}.
2. :remove{item=guard-screw}, then :remove{item=guard}.
3. :disconnect{item=vent}.
4. :remove{item=cover-bolt}, then :remove{item=cover}.
`;

const closing = `
5. :install{item=cover} and :install{item=cover-bolt}.
6. :torque{item=cover-bolt}.
7. :connect{item=vent}.
8. :install{item=guard} and :install{item=guard-screw}. :tighten{item=guard-screw}.
9. :restore{item=battery}.
`;

const without = (text: string, part: string): string => {
  if (!text.includes(part)) throw new Error(`nothing to take out: ${part}`);
  return text.replace(part, 'Look at the work. ');
};

const ledgerOnly = (rules: readonly string[]) =>
  rules.filter((rule) => !rule.startsWith('unused-entry'));
const run = (body: string, front = '') => ledgerOnly(found(gearbox, body, front));

describe('a job that balances', () => {
  test('raises nothing', () => expect(run(opening + closing)).toEqual([]));
  test('nor does a step that reads and changes nothing', () => {
    expect(run('1. :check{item=cover}.\n2. :check{item=cover-bolt}.\n')).toEqual([]);
  });
  test('a torque of bolts that nothing has undone is a check', () => {
    expect(run('1. :torque{item=cover-bolt}.\n')).toEqual(['in-without-out cover-bolt']);
  });
});

describe('what is missing from reassembly', () => {
  test.each([
    [':install{item=cover-bolt}', 'left-out cover-bolt'],
    [':torque{item=cover-bolt}.', 'never-torqued cover-bolt'],
    [':connect{item=vent}.', 'left-open vent'],
    [':tighten{item=guard-screw}.', 'left-loose guard-screw'],
    [':install{item=guard} and', 'left-out guard'],
    [':install{item=cover} and', 'left-out cover'],
    [':restore{item=battery}.', 'left-isolated battery'],
  ])('without %s: one finding, not one for each thing that follows from it', (part, expected) => {
    expect(run(opening + without(closing, part))).toEqual([expected]);
  });

  test.each([
    [
      '1. :drain{item=brake} after :relieve{item=brake}.',
      ['under-pressure brake', 'left-drained brake'],
    ],
    ['1. :relieve{item=brake}, :drain{item=brake}, :fill{item=brake}.', ['not-bled brake']],
    ['1. :relieve{item=brake}, :drain{item=brake}, :fill{item=brake}. :bleed{item=brake}.', []],
    ['1. :fit{item=stand}.\n2. :withdraw{item=stand qty=1}.', ['aid-left-in stand']],
    ['1. :set{item=gear-lever to=first}.', ['control-away gear-lever']],
    ['1. :set{item=gear-lever to=first}.\n2. :set{item=gear-lever to=neutral}.', []],
    ['1. :remove{item=pin}.\n2. :install{item=pin}.', ['old-part-back pin']],
    ['1. :remove{item=pin}.\n2. :install{item=pin new}.', []],
    ['1. :remove{item=pin qty=1}.\n2. :install{item=pin new qty=2}.', ['count-mismatch pin']],
    ['1. :loosen{item=drain-plug}.', ['left-loose drain-plug']],
  ])('%s', (body, expected) => {
    expect([...run(body)].sort()).toEqual([...expected].sort());
  });
});

describe('order', () => {
  test.each([
    [
      'a cover behind its guard',
      '1. :disconnect{item=vent}, :remove{item=cover-bolt}, :remove{item=cover}.\n',
      'blocked cover',
    ],
    ['a part that bolts still hold', '1. :remove{item=guard}.\n', 'still-held guard'],
    [
      'a part that a hose still holds',
      opening.replace('3. :disconnect{item=vent}.', '3. Look.'),
      'still-held cover',
    ],
    [
      'work on what must be isolated',
      `${opening.replace(':isolate{item=battery}', 'Look')}5. :remove{item=wheel}.\n`,
      'energy-live wheel',
    ],
    ['drained with the plug in', '1. :drain{item=oil}.\n2. :fill{item=oil}.\n', 'drain-shut oil'],
    [
      'filled with the plug out',
      '1. :remove{item=drain-plug} and :drain{item=oil}.\n2. :fill{item=oil}.\n3. :install{item=drain-plug}. :torque{item=drain-plug}.\n',
      'fill-open oil',
    ],
    [
      'a pin in the way',
      `${opening}5. :fit{item=lock-pin}.\n${closing}10. :withdraw{item=lock-pin}.\n`,
      'aid-in-way cover',
    ],
    [
      'closed in, then opened for what was forgotten',
      `${opening}5. :remove{item=wheel}.\n${closing}10. :install{item=wheel}.\n`,
      'closed-over cover',
    ],
    [
      'open past the next step',
      '1. :disconnect{item=feed}.\n2. Look.\n3. Look again.\n4. :connect{item=feed}.\n',
      'left-uncapped feed',
    ],
  ])('%s', (_name, body, expected) => {
    expect(run(body)).toContain(expected);
  });

  test('capped in the next step, or connected there, is soon enough', () => {
    expect(
      run(
        '1. :disconnect{item=feed}.\n2. :cap{item=feed}.\n3. Look.\n4. :uncap{item=feed}. :connect{item=feed}.\n',
      ),
    ).toEqual([]);
    expect(run('1. :disconnect{item=feed}.\n2. :connect{item=feed}.\n')).toEqual([]);
  });
});

describe('an item of several instances', () => {
  const hubs = `
parts:
  hub: { name: hub, each: [left, right] }
fasteners:
  hub-nut: { name: hub nut, each: [left, right], torque: 90 N·m, holds: hub }
`;
  const off = '1. :remove{item=hub-nut}.\n2. :remove{item=hub}.\n';
  const messages = (body: string) =>
    check({ 'procedures/example.md': onePage(hubs, body) }).report.findings.map(
      ({ message }) => message,
    );

  test('is counted one by one', () => {
    const on =
      '3. :install{item=hub each=left}.\n4. :install{item=hub-nut each=left}. :torque{item=hub-nut each=left}.\n';
    expect(messages(off + on)).toEqual([
      'The hub nut is still out at the end (right)',
      'The hub is still out at the end (right)',
    ]);
  });
  test('and the left nut keeps the left hub, not the right one', () => {
    const left =
      '1. :remove{item=hub-nut each=left}.\n2. :remove{item=hub each=left}.\n3. :install{item=hub each=left}.\n4. :install{item=hub-nut each=left}. :torque{item=hub-nut each=left}.\n';
    expect(messages(left)).toEqual([]);
  });
  test('and told together where it is the same for all', () => {
    expect(messages(off)).toEqual([
      'The hub nut is still out at the end',
      'The hub is still out at the end',
    ]);
  });
});

describe('more of what real procedures ask', () => {
  const lines = `
fasteners:
  bolt: { name: bolt, count: 4, torque: [20 N·m, 60 N·m] }
connections:
  pipe: { name: brake pipe, type: pipe, circuit: brake, torque: 15 N·m }
  plug: { name: plug, type: connector }
circuits:
  brake: { name: brake fluid, fluid: brake fluid, capacity: 1 L, bleed: at the nipple, pressure: true }
controls:
  lever: { name: lever, positions: [neutral, first], home: neutral }
parts:
  chain: { name: chain }
`;
  const rules = (body: string, front = '') =>
    ledgerOnly(found(lines, body, front)).filter((rule) => !rule.startsWith('action-'));

  test.each<[name: string, body: string, expected: readonly string[], front?: string]>([
    [
      'a stage before the last is not the torque',
      '1. :loosen{item=bolt}.\n2. :torque{item=bolt value="20 N·m"}.\n',
      ['never-torqued bolt'],
    ],
    [
      'the last one is',
      '1. :loosen{item=bolt}.\n2. :torque{item=bolt value="20 N·m"}.\n3. :torque{item=bolt value="60 N·m"}.\n',
      [],
    ],
    [
      'an open line lets air in',
      '1. :relieve{item=brake}. :disconnect{item=pipe}.\n2. :connect{item=pipe}. :torque{item=pipe}.\n',
      ['not-bled brake'],
    ],
    [
      'which bleeding takes out',
      '1. :relieve{item=brake}. :disconnect{item=pipe}.\n2. :connect{item=pipe}. :torque{item=pipe}.\n3. :bleed{item=brake}.\n',
      [],
    ],
    [
      'a pipe connected and not torqued',
      '1. :relieve{item=brake}. :disconnect{item=pipe}.\n2. :connect{item=pipe}.\n3. :bleed{item=brake}.\n',
      ['never-torqued pipe'],
    ],
    [
      'opened under pressure',
      '1. :disconnect{item=pipe}.\n2. :connect{item=pipe}. :torque{item=pipe}.\n3. :bleed{item=brake}.\n',
      ['under-pressure pipe'],
    ],
    [
      'relieved by whoever came before',
      '1. :disconnect{item=pipe}.\n2. :connect{item=pipe}. :torque{item=pipe}.\n3. :bleed{item=brake}.\n',
      ['orphan-procedure'],
      'starts: { brake: relieved }\n',
    ],
    ['a state that is said and is so', '1. :check{item=lever to=neutral}.\n', []],
    [
      'a state that is said and is not so',
      '1. :set{item=lever to=first}.\n2. :check{item=lever to=neutral}.\n3. :set{item=lever to=neutral}.\n',
      ['state-unfit lever'],
    ],
    [
      'rounds that leave all as it was',
      ':::repeat[until it runs smoothly]\n1. :remove{item=chain}.\n2. :install{item=chain}.\n:::\n',
      [],
    ],
    [
      'a round that cannot be done again',
      '1. Look at it.\n\n:::repeat[until it runs smoothly]\n1. :remove{item=chain}.\n:::\n\n2. :install{item=chain}.\n',
      ['out-twice chain'],
    ],
    [
      'the same finding twice is one finding',
      '1. Look.\n\n:::if[the plug is dirty]\n1. :disconnect{item=plug}.\n:::\n\n2. Look again.\n\n:::if[the plug is dirty]\n1. :connect{item=plug}.\n:::\n',
      [],
    ],
  ])('%s', (_name, body, expected, front) => {
    expect(rules(body, front)).toEqual(expected);
  });
});

describe('procedures that perform others', () => {
  const machine = `machine: gearbox\nname: Gearbox\n${gearbox.trim()}\n`;
  const page = (id: string, front: string, body: string) =>
    `---\nprocedure: ${id}\ntitle: ${id}\n${front}---\n\n${body}`;
  const files = (pages: Record<string, [front: string, body: string]>) => ({
    'machines/gearbox.yaml': machine,
    ...Object.fromEntries(
      Object.entries(pages).map(([id, [front, body]]) => [
        `procedures/${id}.md`,
        page(id, front, body),
      ]),
    ),
  });
  const drain: [string, string] = [
    'leaves: { oil: drained }\n',
    '1. :remove{item=drain-plug} and :drain{item=oil}.\n2. :install{item=drain-plug}. :torque{item=drain-plug}.\n',
  ];
  const fill: [string, string] = ['starts: { oil: drained }\n', '1. :fill{item=oil}.\n'];
  const rulesOf = (pages: Record<string, [front: string, body: string]>) =>
    ledgerOnly(told(check(files(pages)).report));

  test('drained by one, filled by another', () => {
    expect(
      rulesOf({
        drain,
        fill,
        job: ['', '::perform{procedure=drain}\n\n::perform{procedure=fill}\n'],
      }),
    ).toEqual([]);
  });
  test('drained by one, filled by none', () => {
    expect(rulesOf({ drain, fill, job: ['', '::perform{procedure=drain}\n'] })).toContain(
      'left-drained oil',
    );
  });
  test('filled where nothing was drained', () => {
    expect(rulesOf({ drain, fill, job: ['', '::perform{procedure=fill}\n'] })).toContain(
      'start-not-met oil',
    );
  });
  test('a promise that the steps do not keep', () => {
    expect(rulesOf({ drain: ['leaves: { oil: drained }\n', '1. :check{item=oil}.\n'] })).toContain(
      'promise-broken oil',
    );
  });
  test('a fault that only the two together make is told at the perform, with the place inside', () => {
    const { report } = check(
      files({
        drain,
        job: [
          '',
          '1. :remove{item=drain-plug}.\n\n::perform{procedure=drain}\n\n::perform{procedure=fill}\n',
        ],
        fill,
      }),
    );
    const twice = report.findings.filter((finding) => finding.rule === 'out-twice');
    expect(twice.map(({ file, item }) => [file, item])).toEqual([
      ['procedures/job.md', 'drain-plug'],
    ]);
    expect(twice[0]?.related.map(({ file }) => file)).toContain('procedures/drain.md');
  });
  test('one section alone', () => {
    const job: [string, string] = [
      '',
      '## Removal\n\n1. :remove{item=pin}.\n\n## Fitting\n\n1. :install{item=pin new}.\n',
    ];
    expect(
      rulesOf({
        job,
        other: ['', '::perform{procedure=job part=removal}\n\n1. :install{item=pin new}.\n'],
      }),
    ).toEqual([]);
    expect(rulesOf({ job, other: ['', '::perform{procedure=job part=removal}\n'] })).toContain(
      'left-out pin',
    );
  });
  const findingsOf = (pages: Record<string, [front: string, body: string]>) =>
    check(files(pages)).report.findings.filter(
      ({ rule }) => rule !== 'unused-entry' && rule !== 'orphan-procedure',
    );
  const placesOf = ({ file, start, related }: ReturnType<typeof findingsOf>[number]) => [
    `${file}:${start.line}`,
    ...related.map((one) => `${one.file}:${one.start.line} ${one.label}`),
  ];

  test('what a performed section leaves is told at the perform, and names the job that did it', () => {
    const common: [string, string] = [
      'leaves: { pin: gone }\n',
      '## Opening\n\n1. :remove{item=pin}.\n',
    ];
    const found = findingsOf({
      common,
      job: ['', '::perform{procedure=common part=opening}\n'],
    });
    expect(found.map(({ rule, procedure }) => [rule, procedure])).toEqual([['left-out', 'job']]);
    expect(found.flatMap(placesOf)).toEqual([
      'procedures/job.md:6',
      'procedures/common.md:9 taken out here, in “common”',
    ]);
  });
  test('so is what a performed procedure leaves', () => {
    const [finding] = findingsOf({ drain, job: ['', '::perform{procedure=drain}\n'] });
    expect(finding?.rule).toBe('left-drained');
    expect(finding && placesOf(finding)).toEqual([
      'procedures/job.md:6',
      'procedures/drain.md:7 drained here, in “drain”',
    ]);
  });
  test('a slip in a section that others perform is told once, and names them', () => {
    const common: [string, string] = [
      'when: feed = manual\n',
      '## Opening\n\n1. :remove{item=pin}.\n\n## Closing\n\n1. Look.\n',
    ];
    const caller: [string, string] = [
      '',
      '1. Look.\n\n::perform{procedure=common part=opening}\n\n::perform{procedure=common part=closing}\n',
    ];
    const { report } = check({
      ...files({ common, first: caller, second: caller }),
      'manual.yaml': 'title: Test\nvariants: { feed: [manual, hydraulic] }\n',
    });
    const found = report.findings.filter(({ rule }) => rule === 'left-out');
    expect(found.map(({ when }) => when)).toEqual([undefined]);
    expect(found.flatMap(placesOf)).toEqual([
      'procedures/common.md:9',
      'procedures/first.md:8 “first” performs this here (feed = manual)',
      'procedures/second.md:8 “second” performs this here (feed = manual)',
    ]);
  });

  test.each<[name: string, pages: Record<string, [string, string]>, expected: string[]]>([
    [
      'a procedure',
      {
        job: [
          '',
          '1. :remove{item=pin}.\n\n::perform{procedure=clsoe}\n\n2. :tighten{item=guard-screw}.\n',
        ],
      },
      ['unknown-procedure'],
    ],
    [
      'a section',
      { job: ['', '## On\n\n1. :remove{item=pin}.\n\n::perform{procedure=job part=off}\n'] },
      ['unknown-section'],
    ],
    [
      'a section to be reversed',
      { job: ['', '## On\n\n1. :remove{item=pin}.\n\n## Off\n\n::reverse{of=onn}\n'] },
      ['unknown-section'],
    ],
    [
      'a procedure that a section performs',
      {
        common: ['', '## On\n\n::perform{procedure=clsoe}\n'],
        job: ['', '1. :remove{item=pin}.\n\n::perform{procedure=common part=on}\n'],
      },
      ['unknown-procedure'],
    ],
    [
      'a procedure; what went wrong before it is told',
      {
        job: [
          '',
          '1. :install{item=pin}.\n\n::perform{procedure=clsoe}\n\n2. :tighten{item=guard-screw}.\n',
        ],
      },
      ['in-without-out', 'unknown-procedure'],
    ],
    [
      'a procedure in one variant; the others are told',
      {
        job: ['', '1. :remove{item=pin}.\n\n::perform{procedure=clsoe when="feed = manual"}\n'],
      },
      ['left-out feed = hydraulic', 'unknown-procedure'],
    ],
  ])('what is not known drags nothing along: %s', (_name, pages, expected) => {
    const { report } = check({
      ...files(pages),
      'manual.yaml': 'title: Test\nvariants: { feed: [manual, hydraulic] }\n',
    });
    const found = report.findings.filter(
      ({ rule }) => rule !== 'unused-entry' && rule !== 'orphan-procedure',
    );
    expect(found.map(({ rule, when = '' }) => `${rule} ${when}`.trim())).toEqual(expected);
  });

  test('procedures that perform each other', () => {
    const rules = rulesOf({
      a: ['', '::perform{procedure=b}\n'],
      b: ['', '::perform{procedure=a}\n'],
    });
    expect(rules.filter((rule) => rule.startsWith('cycle'))).toHaveLength(1);
  });
});

describe('branches and variants', () => {
  const variants = { 'manual.yaml': 'title: Test\nvariants: { feed: [manual, hydraulic] }\n' };
  const when = (body: string) =>
    check({ ...variants, 'procedures/example.md': onePage(gearbox, body) }).report.findings.filter(
      ({ rule }) => rule !== 'unused-entry',
    );

  test('what one variant lacks is said for that variant', () => {
    const [finding] = when(
      '1. :remove{item=pin}.\n2. :install{item=pin new when="feed = manual"}.\n',
    );
    expect([finding?.rule, finding?.when]).toEqual(['left-out', 'feed = hydraulic']);
  });
  test('each way through must balance', () => {
    const [finding] = when(
      '1. :remove{item=pin}.\n\n:::if[the pin is worn]\n\n1. :install{item=pin new}.\n\n:::\n',
    );
    expect([finding?.rule, finding?.when]).toEqual(['left-out', '!"the pin is worn"']);
  });
});

describe('what was found before', () => {
  const bench = `
connections:
  plug: { name: plug, type: connector }
  hose: { name: hose, type: hose }
  lead: { name: lead, type: cable }
`;
  const out = (item: string) => `1. :disconnect{item=${item}}.`;
  const back = (item: string) => `1. :connect{item=${item}}.`;
  const only = (label: string, text: string) => `:::if[${label}]\n${text}\n:::`;
  const either = (...ways: readonly (readonly [label: string, text: string])[]) =>
    ways
      .map(([label, text], i) => `:::${i === 0 ? 'either' : 'or'}[${label}]\n${text}\n:::`)
      .join('\n\n');
  const rules = (...blocks: readonly string[]) =>
    check({ 'procedures/example.md': onePage(bench, blocks.join('\n\nLook.\n\n')) })
      .report.findings.filter(({ rule }) => rule !== 'unused-entry')
      .map(({ rule, item, when }) => `${rule} ${item}${when === undefined ? '' : ` (${when})`}`);

  test.each<[name: string, blocks: readonly string[], expected: readonly string[]]>([
    [
      'either way, asked again in the other order',
      [
        either(['it is old', out('plug')], ['it is new', out('hose')]),
        either(['It is  new', back('hose')], ['it is old', back('plug')]),
      ],
      [],
    ],
    [
      'one of two ways, asked again alone',
      [
        either(['it is old', out('plug')], ['it is new', out('hose')]),
        only('it is new', back('hose')),
        only('it is old', back('plug')),
      ],
      [],
    ],
    [
      'a finding, and later what else may be found in its place',
      [
        only('it is old', out('plug')),
        either(['it is new', out('hose')], ['it is old', back('plug')]),
        only('it is new', back('hose')),
      ],
      [],
    ],
    [
      'a finding in the place of which either of two may be found',
      [
        only('it is old', out('plug')),
        either(
          ['it is new', out('hose')],
          ['it is spoilt', out('lead')],
          ['it is old', back('plug')],
        ),
        either(['it is spoilt', back('lead')], ['it is new', back('hose')], ['it is old', 'Look.']),
      ],
      [],
    ],
    [
      'of three ways, two: the third leaves it open which',
      [
        either(['it is old', out('plug')], ['it is new', out('hose')], ['it is spoilt', 'Look.']),
        either(['it is old', back('plug')], ['it is new', back('hose')]),
      ],
      [
        'in-without-out plug ("it is spoilt" & "it is old")',
        'in-without-out hose ("it is spoilt" & "it is new")',
      ],
    ],
    [
      'two findings that may both be so are not the two ways of one',
      [
        only('it is old', out('plug')),
        only('it is dirty', out('hose')),
        either(['it is old', back('plug')], ['it is dirty', back('hose')]),
      ],
      [
        'left-open plug ("it is old" & "it is dirty" & "it is dirty")',
        'left-open hose ("it is old" & "it is dirty" & "it is old")',
        'in-without-out plug (!"it is old" & !"it is dirty" & "it is old")',
        'in-without-out hose (!"it is old" & !"it is dirty" & "it is dirty")',
      ],
    ],
    [
      'a condition names a way that was found by another’s absence',
      [
        only('it is old', out('plug')),
        either(['it is new', 'Look.'], ['it is old', back('plug')]),
        '1. :disconnect{item=hose when=\'"it is new"\'}.\n2. :connect{item=hose when=\'"it is new"\'}.',
      ],
      [],
    ],
  ])('%s', (_name, blocks, expected) => {
    expect(rules(...blocks)).toEqual(expected);
  });
});

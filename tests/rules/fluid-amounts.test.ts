import { describe, expect, test } from 'vitest';
import { check, told } from '../support/manual.ts';

const machine = `machine: m
name: M
connections:
  cooler-hose: { name: cooler hose, type: hose, circuit: oil, loss: 0.5 L }
circuits:
  oil: { name: gear oil, fluid: ISO VG 150, capacity: 38 L }
`;

/** What the rules on amounts find, with the file. */
function found(files: Readonly<Record<string, string>>, manual = ''): string[] {
  const { report } = check({
    'manual.yaml': `title: T\n${manual}`,
    'machines/m.yaml': machine,
    ...files,
  });
  return report.findings
    .filter(({ rule }) =>
      ['fill-over', 'fill-short', 'in-without-out', 'left-drained'].includes(rule),
    )
    .map(({ rule, file, start }) => `${rule} ${file.replace('procedures/', '')}:${start.line}`);
}

const page = (id: string, body: string, front = '') => ({
  [`procedures/${id}.md`]: `---\nprocedure: ${id}\ntitle: ${id}\n${front}---\n\n${body}`,
});

describe('amounts over procedures', () => {
  const draw = page(
    'draw',
    '1. :drain{item=oil amount="5 L"}\n',
    'leaves: { oil: part-drained }\n',
  );
  const top = (litres: string) =>
    page('top', `1. :fill{item=oil amount="${litres}"}\n`, 'starts: { oil: part-drained }\n');
  const job = page('job', '1. ::perform{procedure=draw}\n2. ::perform{procedure=top}\n');

  test('a contract that fits', () => {
    expect(found({ ...draw, ...top('5 L'), ...job })).toEqual([]);
  });

  test('too much is told where the two meet', () => {
    expect(found({ ...draw, ...top('7 L'), ...job })).toEqual(['fill-over job.md:7']);
  });

  test('too little is told where the two meet', () => {
    expect(found({ ...draw, ...top('3 L'), ...job })).toEqual(['fill-short job.md:7']);
  });

  test('what is wrong by itself is told there, and not again where it is performed', () => {
    const over = page('over', '1. :drain{item=oil}\n2. :fill{item=oil amount="60 L"}\n');
    const user = page('user', '1. ::perform{procedure=over}\n');
    expect(found({ ...over, ...user })).toEqual(['fill-over over.md:7']);
  });
});

describe('a performed section', () => {
  test('is performed with the deeper sections below it', () => {
    const service = page(
      'service',
      '## Out\n\nThe oil goes out.\n\n### Drain\n\n1. :drain{item=oil amount="5 L"}\n\n## In\n\n1. :fill{item=oil amount="5 L"}\n',
    );
    const job = (litres: string) =>
      page(
        'job',
        `1. ::perform{procedure=service part=out}\n2. :fill{item=oil amount="${litres}"}\n`,
      );
    expect(found({ ...service, ...job('5 L') })).toEqual([]);
    expect(found({ ...service, ...job('7 L') })).toEqual(['fill-over job.md:7']);
    expect(found({ ...service, ...job('3 L') })).toEqual(['fill-short job.md:7']);
  });

  test('may be one of the same procedure', () => {
    const flush = (litres: string) =>
      page(
        'flush',
        `## Flush\n\n1. :drain{item=oil amount="5 L"}\n2. :fill{item=oil amount="5 L"}\n\n## Again\n\n1. ::perform{procedure=flush part=flush}\n\n## Draw\n\n1. :drain{item=oil amount="4 L"}\n\n## Top\n\n1. ::perform{procedure=flush part=draw}\n2. :fill{item=oil amount="${litres}"}\n`,
      );
    expect(found(flush('8 L'))).toEqual([]);
    expect(found(flush('14 L'))).toEqual(['fill-over flush.md:22']);
  });

  test('that performs itself is gone through once', () => {
    const round = page(
      'round',
      '## Round\n\n1. :drain{item=oil amount="5 L"}\n2. ::perform{procedure=round part=round}\n3. :fill{item=oil amount="60 L"}\n',
    );
    expect(found(round)).toContain('fill-over round.md:10');
  });
});

describe('what a line loses', () => {
  const open = '1. :disconnect{item=cooler-hose}\n2. :connect{item=cooler-hose}\n';

  test('is topped up to the mark, or by its amount, without a drain', () => {
    expect(found(page('a', `${open}3. :fill{item=oil}\n`))).toEqual([]);
    expect(found(page('a', `${open}3. :fill{item=oil amount="0.5 L"}\n`))).toEqual([]);
  });

  test('is missed, and is no licence to fill twice', () => {
    expect(found(page('a', open))).toEqual(['fill-short a.md:6']);
    expect(found(page('a', `${open}3. :fill{item=oil}\n4. :fill{item=oil}\n`))).toEqual([
      'in-without-out a.md:9',
    ]);
  });

  test('is nothing where the circuit is empty', () => {
    expect(
      found(page('a', `1. :drain{item=oil}\n${open}4. :fill{item=oil amount="38 L"}\n`)),
    ).toEqual([]);
  });
});

test('what is done on some machines only is never told as too much or too little', () => {
  const variants = 'variants: { feed: [hydraulic, gravity] }\n';
  const steps = (drain: string, fill: string) =>
    page(
      'a',
      `1. :drain{item=oil amount="${drain}" when="feed = hydraulic"}\n2. :fill{item=oil amount="${fill}" when="feed = hydraulic"}\n`,
    );
  expect(found(steps('5 L', '5 L'), variants)).toEqual([]);
  expect(found(steps('5 L', '7 L'), variants)).toEqual(['fill-over a.md:7']);
});

describe('values of a wrong kind are told at their place', () => {
  test.each([
    ['capacity: 38 kg', 'unit-kind'],
    ['capacity: -2 L', 'unit-unknown'],
    ['capacity: 0 L', 'capacity-zero'],
    ['capacity: 9 L, mix: { water: 120 % }', 'mix-over'],
    ['capacity: 9 L, mix: { water: 5 L }', 'unit-kind'],
    ['capacity: 9 L, base: ethylene-glycol', 'base-unfit'],
    ['capacity: 9 L, never-with: hose', 'item-unfit'],
    ['capacity: 9 L, never-with: nothing', 'unknown-item'],
  ])('%s: %s', (members, rule) => {
    const items = `fasteners:\n  hose: { name: hose }\ncircuits:\n  oil: { name: oil, fluid: ISO VG 150, ${members} }\n`;
    const { report } = check(
      page(
        'a',
        '1. :check{item=oil}. :check{item=hose}\n',
        `items:\n${items.replace(/^/gm, '  ').trimEnd()}\n`,
      ),
    );
    expect(told(report).map((one) => one.split(' ')[0])).toContain(rule);
  });

  test('a loss that is no volume', () => {
    const items =
      'items:\n  circuits:\n    oil: { name: oil, fluid: ISO VG 150, capacity: 9 L }\n  connections:\n    hose: { name: hose, type: hose, circuit: oil, loss: 0.5 kg }\n';
    const { report } = check(page('a', '1. :check{item=oil}. :check{item=hose}\n', items));
    expect(told(report)).toEqual(['unit-kind']);
  });
});

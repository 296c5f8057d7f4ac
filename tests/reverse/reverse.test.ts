import { describe, expect, test } from 'vitest';
import { actionsIn } from '../../src/link/index.ts';
import type { Action } from '../../src/syntax/index.ts';
import { check, onePage } from '../support/manual.ts';

/** An invented gearbox: cover on bolts, behind a guard; a drain plug; hoses; a battery. */
const gearbox = `
fasteners:
  cover-bolt: { name: cover bolt, count: 6, torque: [20 N·m, 45 N·m], holds: cover }
  guard-screw: { name: guard screw, count: 4, tightness: snug, holds: guard }
  drain-plug: { name: drain plug, torque: 40 N·m }
  wheel-nut: { name: wheel nut, count: 5, torque: 110 N·m, holds: wheel }
parts:
  guard: { name: guard }
  cover: { name: cover, behind: guard }
  gasket: { name: gasket, single-use: true, behind: cover }
  wheel: { name: wheel }
  motor: { name: motor, behind: guard }
connections:
  vent: { name: vent hose, type: hose, on: cover, cap-when-open: true }
  pipe: { name: oil pipe, type: pipe, circuit: oil, each: [left, right] }
circuits:
  oil: { name: gear oil, fluid: gear oil, capacity: 2 L, drain: drain-plug, bleed: at the filler }
energy:
  battery: { name: battery, type: electrical, isolate-before: [motor] }
controls:
  gear-lever: { name: gear lever, positions: [neutral, first], home: neutral }
aids:
  stand: { name: stand, count: 2 }
`;

function written(
  removal: string,
  reverse = '::reverse{of=removal}',
  manual = 'title: Test\n',
  items = gearbox,
) {
  const body = `## Removal\n\n${removal}\n\n## Reassembly\n\n${reverse}\n`;
  const { report, linked } = check({
    'manual.yaml': manual,
    'procedures/example.md': onePage(items, body),
  });
  const last = linked.procedures.get('example')?.procedure.sections.at(-1);
  const list =
    last?.blocks.flatMap((block) => (block.type === 'guarded' ? block.blocks : [block])) ?? [];
  const steps = list.flatMap((block) => (block.type === 'steps' ? block.steps : []));
  return {
    steps: steps.map((step) => [...actionsIn(step.blocks)].map(said).join(', ')),
    rules: report.findings.filter(({ rule }) => rule !== 'unused-entry').map(({ rule }) => rule),
  };
}

function said({ verb, item, qty, isNew, to, each, when }: Action): string {
  return [
    verb,
    qty?.count ?? '',
    isNew ? 'new' : '',
    item.id,
    to?.id ?? '',
    each.map(({ id }) => id).join('+'),
    when === undefined ? '' : `(${when.written})`,
  ]
    .filter((word) => word !== '')
    .join(' ');
}

describe('a removal written out backwards', () => {
  test.each<[name: string, removal: string, steps: readonly string[]]>([
    [
      'last out, first in, with torque',
      '1. :remove{item=guard-screw} and :remove{item=guard}.\n2. :disconnect{item=vent}.\n3. :cap{item=vent}.\n4. :remove{item=cover-bolt}.\n5. :remove{item=cover}.',
      [
        'install cover',
        'install cover-bolt, torque cover-bolt',
        'uncap vent',
        'connect vent',
        'install guard, install guard-screw, tighten guard-screw',
      ],
    ],
    [
      'a new one for what is single-use',
      '1. :remove{item=guard-screw} and :remove{item=guard}.\n2. :disconnect{item=vent} and :cap{item=vent}.\n3. :remove{item=cover-bolt}, :remove{item=cover}.\n4. :remove{item=gasket}.',
      [
        'install new gasket',
        'install cover, install cover-bolt, torque cover-bolt',
        'uncap vent, connect vent',
        'install guard, install guard-screw, tighten guard-screw',
      ],
    ],
    [
      'tightened where it was loosened, not where it came out',
      '1. :loosen{item=wheel-nut}.\n2. :fit{item=stand}.\n3. :remove{item=wheel-nut}.\n4. :remove{item=wheel}.',
      ['install wheel', 'install wheel-nut', 'withdraw stand', 'torque wheel-nut'],
    ],
    [
      'filled and bled when the plug is in again',
      '1. :remove{item=drain-plug} and :drain{item=oil}.',
      ['install drain-plug, torque drain-plug', 'fill oil, bleed oil'],
    ],
    [
      'filled when every pipe is made',
      '1. :remove{item=drain-plug} and :drain{item=oil}. :install{item=drain-plug}. :torque{item=drain-plug}.\n2. :disconnect{item=pipe}.',
      ['connect pipe', 'fill oil, bleed oil'],
    ],
    ['one side alone', '1. :disconnect{item=pipe each=left}.', ['connect pipe left', 'bleed oil']],
    [
      'energy last of all',
      '1. :set{item=gear-lever to=first}.\n2. :isolate{item=battery}.\n3. :fit{item=stand qty=1}.\n4. :fit{item=stand qty=1}.',
      ['withdraw 1 stand', 'withdraw 1 stand', 'set gear-lever neutral', 'restore battery'],
    ],
    [
      'in the lots in which they went',
      '1. :remove{item=wheel-nut qty=2}.\n2. :remove{item=wheel-nut qty=3}.\n3. :remove{item=wheel}.',
      ['install wheel', 'install 3 wheel-nut', 'install 2 wheel-nut, torque wheel-nut'],
    ],
    [
      'what came back by itself is left',
      '1. :remove{item=wheel-nut qty=1}.\n2. :install{item=wheel-nut}. :torque{item=wheel-nut}.\n3. :fit{item=stand}.',
      ['withdraw stand'],
    ],
  ])('%s', (_name, removal, steps) => {
    const { steps: found, rules } = written(removal);
    expect(found).toEqual(steps);
    expect(rules).toEqual([]);
  });

  test('what is excepted stays out, and the ledger says so', () => {
    const { steps, rules } = written(
      '1. :remove{item=guard-screw}.\n2. :remove{item=guard}.',
      '::reverse{of=removal except=guard-screw}',
    );
    expect(steps).toEqual(['install guard']);
    expect(rules).toEqual(['left-out']);
  });

  test('the author’s own steps stand where they say, and take the place of what they do', () => {
    const reverse =
      ':::reverse{of=removal}\n1. Clean the seat of the guard.\n   ::step{at=guard}\n2. :install[Put the screws in crosswise]{item=guard-screw}.\n   ::step{at=guard-screw}\n3. Look at it once more.\n:::';
    const { steps, rules } = written(
      '1. :remove{item=guard-screw}.\n2. :remove{item=guard}.',
      reverse,
    );
    expect(steps).toEqual(['', 'install guard', 'install guard-screw', 'tighten guard-screw', '']);
    expect(rules).toEqual([]);
  });

  test.each<[name: string, own: string, steps: readonly string[]]>([
    [
      'the only undo of its item',
      '1. :install[Slide the cover on]{item=cover}.',
      [
        'install cover',
        'install cover-bolt, torque cover-bolt',
        'connect vent',
        'install guard, install guard-screw, tighten guard-screw',
      ],
    ],
    [
      'one undo in the middle of a step',
      '1. :install[Put the screws in crosswise]{item=guard-screw}.',
      [
        'install cover',
        'install cover-bolt, torque cover-bolt',
        'connect vent',
        'install guard',
        'install guard-screw',
        'tighten guard-screw',
      ],
    ],
    [
      'the torque, where it says the item before whose return it stands',
      '1. :torque[Torque the bolts crosswise]{item=cover-bolt}.\n   ::step{at=cover-bolt}\n2. Look.\n   ::step{at=guard}',
      [
        'install cover',
        'install cover-bolt',
        'torque cover-bolt',
        'connect vent',
        '',
        'install guard, install guard-screw, tighten guard-screw',
      ],
    ],
    [
      'all of them',
      '1. :install{item=cover}.\n2. :install{item=cover-bolt}. :torque{item=cover-bolt}.\n3. :connect{item=vent}.\n4. :install{item=guard}, :install{item=guard-screw}, :tighten{item=guard-screw}.',
      [
        'install cover',
        'install cover-bolt, torque cover-bolt',
        'connect vent',
        'install guard, install guard-screw, tighten guard-screw',
      ],
    ],
  ])('an own step stands in the place of what it does: %s', (_name, own, expected) => {
    const removal =
      '1. :remove{item=guard-screw}, :remove{item=guard}.\n2. :disconnect{item=vent}. :cap{item=vent}. :uncap{item=vent}.\n3. :remove{item=cover-bolt}.\n4. :remove{item=cover}.';
    const { steps, rules } = written(removal, `:::reverse{of=removal}\n${own}\n:::`);
    expect(steps).toEqual(expected);
    expect(rules.filter((rule) => rule !== 'left-uncapped')).toEqual([]);
  });

  test('an own step of one side leaves the other side to be written', () => {
    const { steps, rules } = written(
      '1. :disconnect{item=pipe}.',
      ':::reverse{of=removal}\n1. :connect[Join the left pipe]{item=pipe each=left}.\n:::',
    );
    expect(steps).toEqual(['connect pipe right', 'connect pipe left', 'bleed oil']);
    expect(rules).toEqual([]);
  });

  test.each<[name: string, removal: string, steps: readonly string[]]>([
    [
      'a filler that is shut is opened for it, and shut again',
      '1. :remove{item=plug} and :drain{item=fuel}.',
      ['install plug, torque plug', 'remove cap', 'fill fuel', 'install cap, tighten cap'],
    ],
    [
      'one that is open is shut after it',
      '1. :remove{item=cap}.\n2. :remove{item=plug} and :drain{item=fuel}.',
      ['install plug, torque plug', 'fill fuel', 'install cap, tighten cap'],
    ],
    [
      'one that was opened last is shut after it all the same',
      '1. :remove{item=plug} and :drain{item=fuel}.\n2. :remove{item=cap}.',
      ['install plug, torque plug', 'fill fuel', 'install cap, tighten cap'],
    ],
  ])('filled through its filler: %s', (_name, removal, expected) => {
    const tank = `
fasteners:
  plug: { name: drain plug, torque: 40 N·m }
  cap: { name: filler cap, tightness: snug }
circuits:
  fuel: { name: fuel, fluid: diesel fuel, capacity: 20 L, drain: plug, fill: cap }
`;
    const { steps, rules } = written(removal, '::reverse{of=removal}', 'title: Test\n', tank);
    expect(steps).toEqual(expected);
    expect(rules).toEqual([]);
  });

  test.each<[name: string, removal: string, steps: readonly string[]]>([
    [
      'the lead of a part that was set aside first',
      '2. :set-aside{item=motor}.\n3. :disconnect{item=lead}.',
      ['connect lead', 'return motor', 'torque motor-bolt'],
    ],
    [
      'an aid that keeps a part out, fitted before it came off',
      '2. :disconnect{item=lead}.\n3. :fit{item=prop}.\n4. :remove{item=motor}.',
      ['withdraw prop', 'install motor', 'connect lead', 'torque motor-bolt'],
    ],
    [
      'a bolt that came out after the part that it let go when loose',
      '2. :disconnect{item=lead}.\n3. :remove{item=motor}.\n4. :remove{item=motor-bolt}.',
      ['install motor-bolt', 'install motor', 'connect lead', 'torque motor-bolt'],
    ],
  ])('in an order that the catalogue allows: %s', (_name, removal, expected) => {
    const drive = `
parts:
  motor: { name: motor }
fasteners:
  motor-bolt: { name: motor bolt, count: 2, torque: 40 N·m, holds: motor, lets-go-when: loose }
connections:
  lead: { name: motor lead, type: connector, on: motor }
aids:
  prop: { name: prop, blocks: motor }
`;
    const loosened = `1. :loosen{item=motor-bolt}.\n${removal}`;
    const { steps, rules } = written(loosened, '::reverse{of=removal}', 'title: Test\n', drive);
    expect(steps).toEqual(expected);
    expect(rules).toEqual([]);
  });

  test('a variant’s part comes back for that variant', () => {
    const manual = 'title: Test\nvariants: { feed: [manual, hydraulic] }\n';
    const { steps, rules } = written(
      '1. :fit{item=stand when="feed = hydraulic"}.',
      '::reverse{of=removal}',
      manual,
    );
    expect(steps).toEqual(['withdraw stand (feed = hydraulic)']);
    expect(rules).toEqual([]);
  });

  test('what was found on the way down decides on the way up', () => {
    const { steps, rules } = written(
      '1. Look at the nuts.\n\n:::if[a nut is worn]\n\n1. :fit{item=stand}.\n\n:::',
    );
    expect(steps).toEqual(['withdraw stand ("a nut is worn")']);
    expect(rules).toEqual([]);
  });
});

describe('what cannot be written out', () => {
  test('a section that comes later', () => {
    const body =
      '## Reassembly\n\n::reverse{of=removal}\n\n## Removal\n\n1. :fit{item=stand}.\n2. :withdraw{item=stand}.\n';
    const { report } = check({ 'procedures/example.md': onePage(gearbox, body) });
    expect(report.findings.map(({ rule }) => rule)).toContain('reverse-of-later');
  });
  test('nothing to undo', () => {
    expect(written('1. :check{item=guard}.').rules).toEqual(['reverse-empty']);
  });
  test('a part thrown away asks the author', () => {
    const removal =
      '1. :remove{item=wheel-nut}.\n2. :remove{item=wheel}.\n3. :discard{item=wheel}.';
    const { steps, rules } = written(removal);
    expect(steps).toEqual(['install new wheel', 'install wheel-nut, torque wheel-nut']);
    expect(rules).toEqual(['reverse-asks']);
  });
});

describe('what goes wrong in a written step', () => {
  test('names the step, and says how to have it otherwise', () => {
    const body = [
      '## Removal',
      '1. :remove{item=guard-screw}, :remove{item=guard}.',
      '2. :disconnect{item=vent} and :cap{item=vent}.',
      '3. :remove{item=cover-bolt}, :remove{item=cover}.',
      '4. :remove{item=gasket}.',
      '## Reassembly',
      '::reverse{of=removal except=gasket}',
      '1. :install{item=gasket new}.',
    ].join('\n\n');
    const { report } = check({ 'procedures/example.md': onePage(gearbox, body) });
    const closed = report.findings.find(({ rule }) => rule === 'closed-over');
    expect(closed?.message).toBe(
      'The cover closes over the gasket here, which is still out, in the written-out step “Put the cover in. Put the 6 cover bolts in. Torque the 6 cover bolts”',
    );
    expect(closed?.help).toContain('`::step{at=cover}`');
    expect(closed?.help).toContain('`except=cover`');
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemsSchema } from '../../schemas/catalogue.ts';
import { frontMatterSchema } from '../../schemas/front-matter.ts';
import {
  catalogueFor,
  mayHave,
  ownItemParts,
  readManual,
  readOwnItems,
} from '../../src/catalogue/index.ts';
import { canonical } from '../../src/quantity/index.ts';
import { locator, readYaml } from '../../src/source/index.ts';
import { catalogueOf, filesOf, manualOf } from './manual-of.ts';

describe('entries', () => {
  test('a sound machine has no facts, and its entries stand in the order of the file', () => {
    const { catalogue, facts } = catalogueOf(
      'parts:\n  anvil: { name: anvil, mass: 41 kg }\nfasteners:\n  bolt: { name: bolt, holds: anvil }\ntools:\n  jack: { name: jack }\n',
    );
    expect(facts).toEqual([]);
    expect([...catalogue.items].map(([id, { kind }]) => `${kind} ${id}`)).toEqual([
      'part anvil',
      'fastener bolt',
      'tool jack',
    ]);
  });

  test('values are read, with the text of the author', () => {
    const { item, facts } = catalogueOf(
      [
        'fasteners:',
        '  bolt: { name: bolt, class: 10.9, part-number: 0042, torque: { stages: [20 N·m, 60 N·m + 90°], threads: oiled } }',
        'circuits:',
        '  coolant: { name: coolant, fluid: OAT, capacity: 9.5 L, mix: { concentrate: 50 %, water: 50 % } }',
        '',
      ].join('\n'),
    );
    expect(facts).toEqual([]);
    expect(item('bolt')).toMatchObject({
      class: '10.9',
      'part-number': '0042',
      count: 1,
      torque: {
        threads: 'oiled',
        written: ['20 N·m', '60 N·m + 90°'],
        byDefault: false,
        spec: { stages: [{ does: 'tighten' }, { does: 'tighten-and-turn' }] },
      },
    });
    expect(item('coolant')).toMatchObject({
      capacity: { unit: 'L', amount: { value: 9.5 } },
      mix: [{ name: 'concentrate', share: { unit: '%' } }, { name: 'water' }],
    });
  });

  test('a value that cannot be used is faulty, not missing', () => {
    const { item } = catalogueOf(
      'fasteners:\n  b: { name: b, torque: 22 L, when: x = y }\n  c: { name: c }\n',
    );
    expect(item('b')).toMatchObject({ torque: undefined, when: undefined });
    expect([...item('b').faulty]).toEqual(['when', 'torque']);
    expect([...item('c').faulty]).toEqual([]);
  });

  test('a misspelt unit that is understood is told and used', () => {
    const { item, facts } = catalogueOf('fasteners:\n  b: { name: b, torque: 22 Nm }\n');
    expect(facts).toMatchObject([
      { kind: 'quantity-wrong', problem: { code: 'unit-spelling', standard: 'N·m' } },
    ]);
    expect(item('b')).toMatchObject({ torque: { spec: { stages: [{ does: 'tighten' }] } } });
  });

  test('a variant is resolved', () => {
    const { item, facts, manual } = catalogueOf(
      'parts:\n  p: { name: p, when: feed = hydraulic }\n',
      'title: T\nvariants:\n  feed: [manual, hydraulic]\n  engine: { name: Engine, values: [petrol, diesel] }\nnever: [feed = manual & engine = diesel]\n',
    );
    expect(facts).toEqual([]);
    expect(item('p').when).toMatchObject({ kind: 'test', attribute: { text: 'feed' } });
    expect(manual.space.count(manual.space.all)).toBe(3n);
  });

  test('a broken entry is left out, but its id is known, and the others stay', () => {
    const { catalogue, facts } = catalogueOf(
      'fasteners:\n  b: { name: b, cuont: 8 }\n  c: { name: c, holds: p }\nparts:\n  p: { name: p, behind: b }\n  q: { name: q, behind: z }\n',
    );
    expect(facts.map(({ kind }) => kind)).toEqual(['yaml-shape', 'unknown-item']);
    expect([...catalogue.items.keys()]).toEqual(['c', 'p', 'q']);
    expect([mayHave(catalogue, 'b'), mayHave(catalogue, 'z')]).toEqual([true, false]);
  });

  test.each([
    ['a break in the YAML', 'parts:\n  p: { name: p, behind: b }\nfasteners:\n  b: { name: "b }\n'],
    ['a misspelt group', 'parts:\n  p: { name: p, behind: b }\nfastners:\n  b: { name: b }\n'],
    ['a group that is a list', 'parts:\n  p: { name: p, behind: b }\nfasteners:\n  - b\n'],
  ])('%s makes no id unknown', (_, entries) => {
    const { catalogue, facts } = catalogueOf(entries);
    expect(facts).toHaveLength(1);
    expect(catalogue.isWhole).toBe(false);
    expect(mayHave(catalogue, 'b')).toBe(true);
  });

  test('places lead to the author’s text', () => {
    const { item } = catalogueOf(
      'parts:\n  p:\n    name: p\n    behind: [a, q]\n  q: { name: q }\n',
    );
    const { place, placeOf } = item('p');
    expect([place.start.line, place.start.column]).toEqual([4, 3]);
    expect([placeOf('behind.1').start.line, placeOf('behind.1').start.column]).toEqual([6, 17]);
    expect(placeOf('mass')).toEqual(place);
  });
});

describe('default torques', () => {
  const manual = [
    'title: T',
    'default-torques:',
    '  - { thread: M8, torque: 20 N·m }',
    '  - { thread: M8, class: 8.8, torque: 22 N·m }',
    '  - { thread: M10 x 1.5, class: 10.9, torque: 65 N·m }',
    '  - { thread: 1/2-13, grade: 5, torque: 75 lbf·ft }',
    '',
  ].join('\n');

  test.each([
    ['thread: M8', 20],
    ['thread: M8, class: 8.8', 22],
    ['thread: M8, class: 10.9', 20],
    ['thread: M10×1.5, class: 10.9', 65],
    ['thread: M10x1.5, class: 8.8', undefined],
    ['thread: 1/2-13, grade: 5', 75],
    ['thread: 1/2-13, grade: 8', undefined],
    ['class: 8.8', undefined],
    ['thread: M8, tightness: snug', undefined],
    ['thread: M8, torque: 22 bar', undefined],
  ])('{ %s } has %s', (members, torque) => {
    const { item } = catalogueOf(`fasteners:\n  b: { name: b, ${members} }\n`, manual);
    expect(item('b')).toMatchObject({
      torque:
        torque === undefined
          ? undefined
          : { byDefault: true, spec: { stages: [{ to: { amount: { value: torque } } }] } },
    });
  });

  test('a torque of its own goes before', () => {
    const { item } = catalogueOf(
      'fasteners:\n  b: { name: b, thread: M8, torque: 25 N·m }\n',
      manual,
    );
    expect(item('b')).toMatchObject({ torque: { byDefault: false, written: ['25 N·m'] } });
  });
});

describe('the folder', () => {
  test('without manual.yaml there is a model, and one fact', () => {
    const { value, facts } = readManual(filesOf({}));
    expect(facts).toMatchObject([{ kind: 'file-unreadable', place: { file: 'manual.yaml' } }]);
    expect(value.settings.language).toBe('en');
    expect(value.machines.size).toBe(0);
    expect(value.isWhole).toBe(false);
  });

  test('a fault in one setting leaves the others', () => {
    const { value, facts } = manualOf(
      'machine: m\nname: M\n',
      'edition: 3.10\nlanguage: English\nunits: { torque: lbf·ft, mass: [] }\n',
    );
    expect(facts.map((fact) => 'path' in fact && fact.path)).toEqual([
      'title',
      'language',
      'units.mass',
    ]);
    expect(value.settings).toMatchObject({ title: '', edition: '3.10', language: 'en' });
    expect(value.policy).toMatchObject({ torque: ['lbf·ft'], mass: ['kg', 'lb'] });
  });

  test.each([
    ['a misspelt key', 'title: T\nvairants:\n  feed: [manual, hydraulic]\n'],
    ['a faulty variant', 'title: T\nvariants:\n  feed: manual\n'],
    ['a break in the YAML', 'title: "T\nvariants:\n  feed: [manual, hydraulic]\n'],
  ])('%s makes no variant unknown', (_, manual) => {
    const { facts, value } = manualOf(
      'machine: m\nname: M\nparts:\n  p: { name: p, when: feed = hydraulic }\n',
      manual,
    );
    expect(facts).toMatchObject([{ place: { file: 'manual.yaml' } }]);
    expect(value.isWhole).toBe(false);
  });

  test('files that could not be read are told', () => {
    const unreadable = [
      { path: 'machines/m.yaml', reason: 'it is not UTF-8' },
      { path: 'procedures/p.md', reason: 'it is not UTF-8' },
    ];
    const { facts } = readManual({ ...filesOf({ 'manual.yaml': 'title: T\n' }), unreadable });
    expect(facts).toMatchObject([{ kind: 'file-unreadable', place: { file: 'machines/m.yaml' } }]);
  });

  test('a machine is called as its file is', () => {
    const { value, facts } = readManual(
      filesOf({
        'manual.yaml': 'title: T\n',
        'machines/chipper.yaml': 'machine: shredder\nname: S\n',
      }),
    );
    expect(facts).toMatchObject([
      {
        kind: 'machine-name-differs',
        id: 'shredder',
        file: 'machines/chipper.yaml',
        place: { start: { line: 1, column: 10 } },
      },
    ]);
    expect([...value.machines.keys()]).toEqual(['shredder']);
  });

  test('a machine without its name or id still has its entries', () => {
    const { value, facts } = readManual(
      filesOf({
        'manual.yaml': 'title: T\n',
        'machines/chipper.yaml': 'parts:\n  p: { name: p }\n',
      }),
    );
    expect(facts.map((fact) => 'path' in fact && fact.path)).toEqual(['machine', 'name']);
    expect([...(value.machines.get('chipper')?.items.keys() ?? [])]).toEqual(['p']);
  });

  test('two files of one machine', () => {
    const text = 'machine: m\nname: M\n';
    const { facts } = readManual(
      filesOf({ 'machines/m.yml': text, 'machines/m.yaml': text, 'manual.yaml': 'title: T\n' }),
    );
    expect(facts).toMatchObject([
      {
        kind: 'duplicate-id',
        id: 'm',
        what: 'machine',
        place: { file: 'machines/m.yml' },
        first: { file: 'machines/m.yaml' },
      },
    ]);
  });

  test('the order in which files come changes nothing', () => {
    const files = filesOf({
      'manual.yaml': 'title: T\n',
      'machines/a.yaml': 'machine: a\nname: A\nparts:\n  p: { name: p, behind: x }\n',
      'machines/b.yaml': 'machine: a\nname: B\n',
    });
    const shuffled = { ...files, texts: files.texts.toReversed() };
    expect(readManual(shuffled).facts).toEqual(readManual(files).facts);
    expect([...readManual(shuffled).value.machines.keys()]).toEqual([
      ...readManual(files).value.machines.keys(),
    ]);
  });

  test('any text at all is read without an exception', () => {
    const line = fc.constantFrom(
      'title: T',
      'machine: m',
      'name: M',
      'fasteners:',
      'parts:',
      '  b: { name: b, torque: 22 }',
      '  b: { name: b, holds: b, behind: b }',
      '  c: {',
      'never: [a]',
      'variants:',
      '  a: [b, c]',
      '  a: b',
      'units: { torque: x }',
      '- x',
      '\tb: c',
      'default-torques: [{ thread: M8, torque: x }]',
      'circuits:',
      '  o: { name: o, fluid: f, capacity: x, mix: { a: 200 % } }',
    );
    const text = fc.array(line, { maxLength: 10 }).map((lines) => lines.join('\n'));
    fc.assert(
      fc.property(text, text, (manual, machine) => {
        const { value, facts } = manualOf(machine, manual);
        expect(value.machines.size).toBe(1);
        for (const { place } of facts)
          expect(place.start.offset).toBeLessThanOrEqual(place.end.offset);
      }),
    );
  });
});

describe('entries of a procedure', () => {
  const { value: manual } = manualOf(
    'machine: m\nname: M\nparts:\n  anvil: { name: anvil }\n  guard: { name: guard }\n',
  );
  const machine = manual.machines.get('m');

  function own(items: string) {
    const text = `---\nprocedure: p\ntitle: P\nitems:\n${items}---\n`;
    const at = locator('procedures/p.md', text);
    const yaml = readYaml(at, 4, text.length - 4, frontMatterSchema, ownItemParts);
    const given = {
      procedure: 'p',
      title: 'P',
      locator: at,
      items: yaml.value?.items ?? itemsSchema.parse({}),
      yaml,
    };
    const { value, facts } = readOwnItems(given, manual, machine);
    return { value, facts: [...yaml.facts, ...facts] };
  }

  test('join those of the machine and may name them', () => {
    const { value, facts } = own('  fasteners:\n    b: { name: b, holds: anvil }\n');
    expect(facts).toEqual([]);
    const joined = catalogueFor(machine, value);
    expect([...joined.items.keys()].sort()).toEqual(['anvil', 'b', 'guard']);
    expect(joined.id).toBe('m');
  });

  test('may not use an id again', () => {
    const { facts } = own('  tools:\n    anvil: { name: small anvil }\n');
    expect(facts).toMatchObject([
      {
        kind: 'duplicate-id',
        id: 'anvil',
        what: 'part',
        place: { file: 'procedures/p.md', start: { line: 6, column: 5 } },
        first: { file: 'machines/m.yaml' },
      },
    ]);
  });

  test('have their faults told where they stand, and one leaves the others', () => {
    const { value, facts } = own('  parts:\n    a: { name: a, behind: gard }\n    b: { nam: b }\n');
    expect(facts).toMatchObject([
      {
        kind: 'yaml-shape',
        path: 'items.parts.b.nam',
        near: 'name',
        place: { start: { line: 7, column: 10 } },
      },
      {
        kind: 'unknown-item',
        id: 'gard',
        near: 'guard',
        place: { start: { line: 6, column: 27 } },
      },
    ]);
    expect([...value.items.keys()]).toEqual(['a']);
    expect([...value.faulty]).toEqual(['b']);
  });

  test('stand alone where there is no machine', () => {
    const { value } = own('  parts:\n    a: { name: a }\n');
    expect(catalogueFor(undefined, value)).toBe(value);
    expect(catalogueFor(machine, undefined)).toBe(machine);
    expect(catalogueFor(undefined, undefined).items.size).toBe(0);
  });
});

test('percentages count in percent', () => {
  const { item } = catalogueOf(
    'circuits:\n  c: { name: c, fluid: f, capacity: 3 L, mix: { a: 33.3 %, b: 33.3 %, d: 33.4 % } }\n',
  );
  const circuit = item('c');
  const shares =
    circuit.kind === 'circuit' ? circuit.mix.map(({ share }) => canonical(share).low?.value) : [];
  expect(shares).toEqual([33.3, 33.3, 33.4]);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { machineSchema } from '../../schemas/catalogue.ts';
import { locator, readYaml } from '../../src/source/index.ts';
import { marked, spanOf } from './marked.ts';

function read<S extends z.ZodType>(text: string, schema: S, parts?: readonly string[]) {
  return readYaml(locator('f.yaml', text), 0, text.length, schema, parts);
}

describe('values', () => {
  const labels = z.record(z.string(), z.union([z.string(), z.number()]).transform(String));

  test.each([
    ['8.8', '8.8'],
    ['10.9', '10.9'],
    ['4.0', '4.0'],
    ['007', '007'],
    ['1e3', '1e3'],
    ['0x10', '0x10'],
    ['12345678901234567890', '12345678901234567890'],
    ['"4.0"', '4.0'],
    ['5', '5'],
  ])('a label %s prints as written', (written, printed) => {
    expect(read(`class: ${written}\n`, labels).value).toEqual({ class: printed });
  });

  test('numbers are numbers where numbers belong, however they are written', () => {
    const schema = z.strictObject({
      at: z.array(z.number()),
      class: z.union([z.string(), z.number()]).transform(String),
    });
    expect(read('at: [1.0, 2.50, 3]\nclass: 4.0\n', schema).value).toEqual({
      at: [1, 2.5, 3],
      class: '4.0',
    });
  });

  test('numbers as keys keep their text', () => {
    expect(read('8.8: a\n10.0: b\n', labels).value).toEqual({ '8.8': 'a', '10.0': 'b' });
  });

  test('anchors and aliases repeat values', () => {
    const { value, facts } = read(
      'a: &t { x: 1 }\nb: *t\n',
      z.record(z.string(), z.record(z.string(), z.number())),
    );
    expect(facts).toEqual([]);
    expect(value).toEqual({ a: { x: 1 }, b: { x: 1 } });
  });

  test('words that other readers of YAML take for true or false are words (YAML 1.2 core schema)', () => {
    expect(
      read('a: yes\nb: off\nc: true\n', z.record(z.string(), z.union([z.string(), z.boolean()])))
        .value,
    ).toEqual({
      a: 'yes',
      b: 'off',
      c: true,
    });
  });

  test('a byte-order mark and CRLF ends change nothing but the places', () => {
    const { text, spans } = marked('\uFEFFmachine: m\r\nname: «M»\r\n');
    const { value, facts, placeOf } = read(text, machineSchema);
    expect(facts).toEqual([]);
    expect(value?.name).toBe('M');
    expect(spanOf(placeOf('name'))).toEqual(spans[0]);
  });

  test('names that objects inherit are ordinary keys', () => {
    const { value, facts } = read('constructor: a\ntoString: b\n', labels);
    expect(facts).toEqual([]);
    expect(Object.entries(value ?? {})).toEqual([
      ['constructor', 'a'],
      ['toString', 'b'],
    ]);
    expect(read('__proto__: a\n', labels).facts).toMatchObject([{ kind: 'yaml-broken' }]);
  });
});

describe('places', () => {
  const source = [
    'machine: «m»',
    'name: M',
    '«fasteners»:',
    '  «bolt»:',
    '    name: «anvil bolt»',
    '    «holds»:',
    '      - «anvil»',
    '    behind: «[guard, belt]»',
    '    torque: {stages: [«10 N·m», 20 N·m]}',
    '',
  ].join('\n');
  const paths = [
    'machine',
    'fasteners',
    'fasteners.bolt',
    'fasteners.bolt.name',
    'fasteners.bolt.holds',
    'fasteners.bolt.holds.0',
    'fasteners.bolt.behind',
    'fasteners.bolt.torque.stages.0',
  ];
  const { text, spans } = marked(source);
  const { placeOf, keyPlaceOf } = read(text, machineSchema);

  test.each(paths.map((path, i) => [path, spans[i]] as const))('of %s', (path, span) => {
    expect(spanOf(placeOf(path))).toEqual(span);
  });

  test('of what is not there: the nearest that is', () => {
    expect(placeOf('fasteners.bolt.count')).toEqual(placeOf('fasteners.bolt'));
    expect(placeOf('fasteners.bolt.name.first')).toEqual(placeOf('fasteners.bolt.name'));
    expect(placeOf('parts.anvil')).toEqual(keyPlaceOf('machine'));
  });

  test('of keys', () => {
    const { start } = keyPlaceOf('fasteners.bolt.torque');
    expect(text.slice(start.offset, start.offset + 6)).toBe('torque');
  });

  test('of a member under an alias: where the value is written', () => {
    const other = marked('a: &t { x: «1» }\n«b»: *t\n');
    const { placeOf: of } = read(other.text, z.unknown());
    expect(spanOf(of('b'))).toEqual(other.spans[1]);
    expect(spanOf(of('b.x'))).toEqual(other.spans[0]);
  });
});

describe('parts', () => {
  const parts = ['*', '*.*'];

  test('a fault in one entry costs that one alone', () => {
    const text =
      'machine: m\nname: M\nparts:\n  a: { name: a }\n  b: { name: 3 }\n  c: { name: c }\ntolls: {}\n';
    const { value, facts, dropped } = read(text, machineSchema, parts);
    expect(Object.keys(value?.parts ?? {})).toEqual(['a', 'c']);
    expect(facts).toHaveLength(2);
    expect([...dropped].sort()).toEqual(['parts.b', 'tolls']);
  });

  test('a break costs what stands behind it', () => {
    const text =
      'machine: m\nname: M\nparts:\n  a: { name: a }\n  b: { name: "b }\n  c: { name: c }\n';
    const { value, facts, dropped, isBroken } = read(text, machineSchema, parts);
    expect(isBroken).toBe(true);
    expect(Object.keys(value?.parts ?? {})).toEqual(['a']);
    expect(facts).toMatchObject([{ kind: 'yaml-broken', place: { start: { line: 5 } } }]);
    expect(dropped).toEqual(['parts.b']);
  });

  test('what is required cannot be left out', () => {
    expect(read('machine: m\n', machineSchema, parts).value).toBeUndefined();
  });
});

describe('any text', () => {
  const nasty = [
    '['.repeat(1e5),
    '{a: '.repeat(1e5),
    '- '.repeat(1e5),
    '? '.repeat(1e5),
    Array.from({ length: 2000 }, (_, i) => `${' '.repeat(i)}a:\n`).join(''),
    `a: &a [${'x, '.repeat(9)}x]\n${Array.from({ length: 26 }, (_, i) => `b${i}: &b${i} [${`*${i === 0 ? 'a' : `b${i - 1}`}, `.repeat(9)}x]\n`).join('')}`,
    `${'a: 1\n'.repeat(2e4)}`,
    `"${'x'.repeat(1e6)}`,
    `a: ${'x'.repeat(1e6)}`,
    `${'x'.repeat(1e6)}: a`,
    '\0',
    '\uD800',
    '%YAML 1.1\n---\na: yes\n',
    '---\n...\n---\n',
    '!!binary x',
    '? ? ? a',
    '&a *a',
    '*a : b',
    '"\\uD800": 1',
    '\u2028',
  ];

  test.each(nasty.map((text) => [text.slice(0, 20), text] as const))(
    '%j …',
    (_, text) => {
      const { facts, placeOf } = read(text, machineSchema, ['*', '*.*']);
      expect(facts.length).toBeGreaterThan(0);
      expect(placeOf('fasteners.a').file).toBe('f.yaml');
    },
    5000,
  );

  const yamlish = fc
    .array(
      fc.constantFrom(
        'a',
        'fasteners',
        'name',
        ': ',
        ':',
        '\n',
        '\n  ',
        '\n    ',
        '- ',
        '[',
        ']',
        '{',
        '}',
        ', ',
        '"',
        "'",
        '&x ',
        '*x',
        '!t ',
        '|',
        '>',
        '#',
        ' #',
        '\t',
        '\r\n',
        '---\n',
        '...\n',
        '%',
        '@',
        '1.0',
        '\\',
        '<<',
        '? ',
        '\uFEFF',
        'é',
      ),
      { maxLength: 40 },
    )
    .map((pieces) => pieces.join(''));

  test('is read without an exception, with all places inside the window, the same each time', () => {
    fc.assert(
      fc.property(
        yamlish,
        fc.string({ maxLength: 9 }),
        fc.string({ maxLength: 9 }),
        (text, before, after) => {
          const file = locator('f.md', before + text + after);
          const [start, end] = [before.length, before.length + text.length];
          const once = readYaml(file, start, end, machineSchema, ['*', '*.*']);
          const again = readYaml(file, start, end, machineSchema, ['*', '*.*']);
          expect(again.facts).toEqual(once.facts);
          for (const { place } of once.facts) {
            expect(place.start.offset).toBeGreaterThanOrEqual(start);
            expect(place.end.offset).toBeLessThanOrEqual(end);
            expect(place.end.offset).toBeGreaterThanOrEqual(place.start.offset);
          }
          if (once.value === undefined) expect(once.facts).not.toEqual([]);
        },
      ),
      { numRuns: 3000 },
    );
  });

  test('that is JSON means what JSON means (RFC 8259; YAML 1.2 holds JSON)', () => {
    const value = fc.letrec((tie) => ({
      any: fc.oneof(
        { maxDepth: 3 },
        fc.string({ unit: 'grapheme-ascii' }),
        fc.integer(),
        fc.boolean(),
        fc.constant(null),
        fc.array(tie('any'), { maxLength: 4 }),
        tie('map'),
      ),
      map: fc.dictionary(
        fc.string({ unit: 'grapheme-ascii' }).filter((key) => key !== '__proto__'),
        tie('any'),
        { maxKeys: 4, noNullPrototype: true },
      ),
    })).map;
    fc.assert(
      fc.property(value, (data) => {
        const text = JSON.stringify(data);
        expect(read(text, z.json()).value).toEqual(JSON.parse(text));
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { judgePicture } from '../../src/command/judge-picture.ts';
import { inspect } from '../../src/report/index.ts';
import {
  type Answers,
  defaultMachine,
  defaultTitle,
  plainLine,
  scaffold,
  unitsFirst,
} from '../../src/scaffold/index.ts';
import { told } from '../support/manual.ts';

const answers: Answers = {
  title: defaultTitle(defaultMachine),
  machine: defaultMachine,
  units: 'metric',
  prefix: undefined,
  publisher: undefined,
};

/** The check of a new manual. */
function checked(given: Answers) {
  const files = scaffold(given);
  const pictures = files
    .filter(({ path }) => path.endsWith('.svg'))
    .map(({ path, text }) => judgePicture(path, Buffer.from(text)));
  const texts = files.filter(({ path }) => !path.endsWith('.svg'));
  const others = pictures.map(({ path }) => path);
  return inspect({ texts, unreadable: [], others, pictures }, '0.0.0');
}

/** Texts that YAML, Markdown or a file system could read as something else. */
const hostile = [
  'Pumpe: "groß" & #1',
  "It's 'quoted': [a, b] {c: d}",
  '- not a list',
  '# no comment',
  '&anchor *alias !tag |',
  '> folded',
  '%directive',
  '@at `tick`',
  'yes',
  'null',
  '~',
  '0x1F',
  '1e5',
  '12:30:45',
  '2026-09-01',
  '---',
  '...',
  'con',
  '../../etc/passwd',
  'a\\b"c',
  'Łódź Šumava Ærø İstanbul',
  '搅拌机 3 号',
  '🔩',
  ':remove[the cover]{item=cover}',
  '<script>alert(1)</script>',
  'a'.repeat(300),
  'word '.repeat(80).trim(),
];

describe('a new manual', () => {
  const prefixes = [undefined, 'WM-3', '0017', '#: "x"'];
  const publishers = [undefined, 'Pellbrook Works', 'a: b # c'];
  const combinations = unitsFirst.flatMap((units) =>
    prefixes.flatMap((prefix) => publishers.map((publisher) => ({ units, prefix, publisher }))),
  );

  test.for(combinations)(
    'passes with no finding: $units, prefix $prefix, publisher $publisher',
    (combination) => {
      const { report, linked } = checked({ ...answers, ...combination });
      expect(told(report)).toEqual([]);
      expect(report.manual.procedures).toBe(4);
      const { settings } = linked.manual;
      expect(settings['document-prefix']).toBe(combination.prefix);
      expect(settings.publisher).toBe(combination.publisher);
      expect(settings.units.torque).toEqual(
        combination.units === 'metric' ? ['N·m', 'lbf·ft'] : ['lbf·ft', 'N·m'],
      );
    },
  );

  test.for(hostile)('says %j as it was given, and passes', (words) => {
    const { report, linked } = checked({
      ...answers,
      title: words,
      machine: words,
      prefix: words,
      publisher: words,
    });
    expect(told(report)).toEqual([]);
    expect(linked.manual.settings.title).toBe(words);
    expect([...linked.manual.machines.values()].map(({ name }) => name)).toEqual([words]);
  });

  test('passes whatever its texts are', () => {
    const line = fc
      .oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }), fc.string())
      .map(plainLine)
      .filter((text) => text !== '');
    fc.assert(
      fc.property(line, line, (title, machine) => {
        const { report, linked } = checked({ ...answers, title, machine });
        expect(told(report)).toEqual([]);
        expect(linked.manual.settings.title).toBe(title);
      }),
      { numRuns: 25 },
    );
  });

  test('has paths that every system takes, for a machine of any name', () => {
    for (const machine of hostile)
      for (const { path } of scaffold({ ...answers, machine }))
        expect(path).toMatch(
          /^(?:[a-z][a-z0-9]*(?:-[a-z0-9]+)*\/){0,2}[a-z][a-z0-9-]{0,50}\.[a-z]+$/,
        );
    const machines = (machine: string) =>
      scaffold({ ...answers, machine }).flatMap(
        ({ path }) => /machines\/(.*)\.yaml/.exec(path)?.[1],
      );
    expect(machines('Mixer No. 3').filter(Boolean)).toEqual(['mixer-no-3']);
    expect(machines('con').filter(Boolean)).toEqual(['machine-con']);
    expect(machines('搅拌机').filter(Boolean)).toEqual(['machine']);
  });

  test('shows removal and reassembly, a shared job, hazards, torques, a fluid, variants and a picture', () => {
    const files = new Map(scaffold(answers).map(({ path, text }) => [path, text]));
    const all = [...files.values()].join('\n');
    for (const part of [
      ':::reverse{of=removal}',
      '::perform{procedure=make-safe}',
      '::hazard{of=',
      ':torque[',
      ':::fluid{',
      ':::when[',
      ':::if[',
      ':::figure{',
      'torque: [20 N·m, 45 N·m]',
    ])
      expect(all).toContain(part);
    const settings: unknown = parse(files.get('manual.yaml') ?? '');
    expect(settings).toMatchObject({
      safety: expect.stringMatching(/local codes[\s\S]*licen[cs]e/),
      variants: { lamp: {}, belts: {} },
    });
    for (const [path, text] of files)
      if (/\.yaml$/.test(path)) expect(text.match(/^\s*# /gm)?.length, path).toBeGreaterThan(5);
  });
});

test('a line loses what nobody sees', () => {
  expect(plainLine(' a\tb\r\n\u2028c\u202Ed\u0000 ')).toBe('a b cd');
  expect(plainLine('\u200E\n')).toBe('');
});

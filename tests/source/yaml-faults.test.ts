import { describe, expect, test } from 'vitest';
import { machineSchema } from '../../schemas/catalogue.ts';
import { frontMatterSchema } from '../../schemas/front-matter.ts';
import { manualSchema } from '../../schemas/manual.ts';
import { locator, readYaml, type SourceFact } from '../../src/source/index.ts';
import { marked, spanOf } from './marked.ts';

type Told = Partial<Record<'reason' | 'path' | 'expected' | 'found' | 'near', string | RegExp>>;
type Case = readonly [name: string, text: string, ...told: Told[]];

/** Bad YAML, the place of each fault between « and », and what is told of it. */
const machines: readonly Case[] = [
  [
    'a misspelt key',
    'machine: m\nname: M\nfasteners:\n  bolt: { name: bolt, «cuont»: 8 }\n',
    { path: 'fasteners.bolt.cuont', expected: 'the key count', found: 'cuont', near: 'count' },
  ],
  [
    'a key that resembles nothing',
    'machine: m\nname: M\ntools:\n  jack: { name: jack, «colour»: red }\n',
    { path: 'tools.jack.colour', expected: /^a key of name, plural, .* or \S+$/, found: 'colour' },
  ],
  [
    'a misspelt required key is one fault',
    'machine: m\nname: M\nparts:\n  p: { «nmae»: x }\n',
    { path: 'parts.p.nmae', near: 'name' },
  ],
  [
    'a missing key is placed at the entry',
    'machine: m\nname: M\ncircuits:\n  «oil»: { name: oil, capacity: 3 L }\n',
    { path: 'circuits.oil.fluid', expected: 'text', found: undefined },
  ],
  [
    'a key without a value',
    'machine: m\nname: M\nparts:\n  p:\n    «name»:\n',
    { path: 'parts.p.name', expected: 'text', found: 'nothing' },
  ],
  [
    'a value that is empty text',
    'machine: m\nname: M\nparts:\n  p: { name: «""» }\n',
    { path: 'parts.p.name', expected: 'text that is not empty', found: 'empty text' },
  ],
  [
    'a count in words',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, count: «eight» }\n',
    { path: 'fasteners.b.count', expected: 'a whole number from 1', found: 'eight' },
  ],
  [
    'a count of none',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, count: «0» }\n',
    { expected: 'a whole number from 1', found: '0' },
  ],
  [
    'a count that is not whole',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, count: «1.5» }\n',
    { expected: 'a whole number from 1', found: '1.5' },
  ],
  [
    'a torque without a unit is still text for the quantity room, a bare number is not',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, torque: «22» }\n',
    { path: 'fasteners.b.torque', expected: /^a torque such as 22 N·m/, found: '22' },
  ],
  [
    'a fault in one stage',
    'machine: m\nname: M\nfasteners:\n  b:\n    name: b\n    torque:\n      stages: [10 N·m, «20»]\n',
    { path: 'fasteners.b.torque.stages.1', expected: /^a value with its unit/, found: '20' },
  ],
  [
    'a misspelt word of a fixed list',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, tightness: «hand-tigth» }\n',
    { expected: 'hand-tight, snug or until-drag', found: 'hand-tigth', near: 'hand-tight' },
  ],
  [
    'a reference that is no id',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, holds: «Anvil» }\n',
    { path: 'fasteners.b.holds', expected: /^an id: /, found: 'Anvil' },
  ],
  [
    'a bad element in a list of ids',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, holds: [anvil, «3»] }\n',
    { path: 'fasteners.b.holds.1', expected: /^an id: /, found: '3' },
  ],
  [
    'an id with capitals',
    'machine: m\nname: M\nparts:\n  «Anvil_1»: { name: anvil }\n',
    { path: 'parts.Anvil_1', expected: /^an id: /, found: 'Anvil_1' },
  ],
  [
    'a misspelt way of writing a pattern',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, pattern: { «cirle»: 8 } }\n',
    { path: 'fasteners.b.pattern.cirle', near: 'circle' },
  ],
  [
    'a fault inside the pattern that was meant',
    'machine: m\nname: M\nfasteners:\n  b: { name: b, pattern: { positions: [[0, 1.0], [2, «x»]] } }\n',
    { path: 'fasteners.b.pattern.positions.1.1', expected: 'a number', found: 'x' },
  ],
  [
    'a list where keys belong',
    'machine: m\nname: M\n«parts»:\n  - name: anvil\n',
    { path: 'parts', expected: 'keys and values', found: 'a list' },
  ],
  [
    'a list where a text belongs',
    'machine: m\nname: «[M, N]»\n',
    { path: 'name', expected: 'text', found: 'a list' },
  ],
  [
    'a list at the top',
    '«- machine: m»\n',
    { path: '', expected: 'keys and values', found: 'a list' },
  ],
  [
    'a misspelt group',
    'machine: m\nname: M\n«fastners»:\n  b: { name: b }\n',
    { path: 'fastners', near: 'fasteners' },
  ],
  [
    'a control with one position',
    'machine: m\nname: M\ncontrols:\n  c: { name: c, positions: «[up]», home: up }\n',
    { expected: 'a list of at least 2' },
  ],
  [
    'the same entry twice',
    'machine: m\nname: M\nparts:\n  a: { name: a }\n  b: { name: b }\n  «a»: { name: c }\n',
    { reason: 'the key a stands twice here; the first is on line 4' },
  ],
  [
    'a tab',
    'machine: m\nname: M\nparts:\n«\t»p: { name: p }\n',
    { reason: /^a tab in the indentation/ },
  ],
  [
    'tabs in several lines are told once, and not what follows from them',
    'machine: m\nname: M\nparts:\n«\t»p:\n\t  name: a\n\t  name: b\n',
    { reason: /^tabs in the indentation, here and in 2 more lines/ },
  ],
  [
    'a second colon',
    'machine: m\nname: «brush chipper: large»\n',
    { reason: /^a second colon .* put the value in quotes/ },
  ],
  [
    'lines that do not line up',
    'machine: m\nname: M\nparts:\n    p: { name: p }\n« » q: { name: q }\n',
    { reason: /^the indentation does not line up/ },
  ],
  ['a key without a colon', 'machine: m\nname: M\n«parts»\n', { reason: /^a key without a colon/ }],
  [
    'a colon without a space',
    '«machine:m\nname»: M\n',
    { reason: /is a colon missing, or the space after it/ },
  ],
  [
    'a quote that stays open',
    'machine: m\nname: «"»M\nparts:\n  p: { name: p }\n',
    { reason: 'a quote that is not closed' },
  ],
  [
    'a bracket that stays open',
    'machine: m\nname: M\nparts: { p: { name: p }\n«t»ools: {}\n',
    { reason: 'a bracket above is not closed' },
  ],
  [
    'a bracket too many',
    'machine: m\nname: M\nparts: { p: { name: p } }«}»\n',
    { reason: '} does not belong here' },
  ],
  [
    'a sign that YAML keeps for itself',
    'machine: m\nname: «@»M\n',
    { reason: 'a value cannot start with @; put it in quotes' },
  ],
  [
    'a backslash in quotes',
    'machine: m\nname: "M«\\»q"\n',
    { reason: /^a backslash that means nothing/ },
  ],
  [
    'a repeat of nothing',
    'machine: m\nname: «*title»\n',
    { reason: '*title repeats a value that no &title before it marks' },
  ],
  [
    'a repeat inside itself',
    'machine: m\nname: M\nparts: &p { a: «*p» }\n',
    { reason: '*p stands inside the value that it repeats' },
  ],
  [
    'a tag',
    'machine: m\nname: «!title» M\n',
    { reason: 'the tag !title has no meaning here; leave it out' },
  ],
  [
    'a list as a key',
    'machine: m\nname: M\nparts: { ? «[a]» : { name: a } }\n',
    { reason: /^a key must be one plain word/ },
  ],
  [
    'a second document',
    'machine: m\nname: M\n---\n«m»achine: n\n',
    { reason: /^a second document begins here/ },
  ],
  [
    'merging is no part of YAML 1.2',
    'machine: m\nname: M\nparts:\n  a: &a { name: a }\n  b: { name: b, «<<»: *a }\n',
    { path: 'parts.b.<<', found: '<<' },
  ],
];

const manuals: readonly Case[] = [
  [
    'an address that is none',
    'title: T\naddress: «workshop»\n',
    { path: 'address', expected: /^a web address such as/, found: 'workshop' },
  ],
  [
    'a language by its name',
    'title: T\nlanguage: «English»\n',
    { path: 'language', expected: 'a language tag such as en or en-GB' },
  ],
  [
    'a variant with one value',
    'title: T\nvariants:\n  feed: «[manual]»\n',
    { path: 'variants.feed', expected: 'a list of at least 2' },
  ],
  [
    'a variant as text',
    'title: T\nvariants:\n  feed: «manual»\n',
    { path: 'variants.feed', expected: 'a list of at least 2 values, or keys name and values' },
  ],
  [
    'a misspelt level',
    'title: T\nrules:\n  left-out: «eror»\n',
    { path: 'rules.left-out', near: 'error', found: 'eror' },
  ],
  ['no title', '«edition»: 2\n', { path: 'title', expected: 'text', found: undefined }],
  ['an empty file', '«»', { path: 'title', found: undefined }],
  ['a file with nothing but a comment', '«»# soon\n', { path: 'title', found: undefined }],
];

const frontMatters: readonly Case[] = [
  [
    'a state that is no id',
    'procedure: p\ntitle: T\nleaves:\n  coolant: «Drained»\n',
    { path: 'leaves.coolant', expected: /^an id: /, found: 'Drained' },
  ],
  [
    'a count of a state in words',
    'procedure: p\ntitle: T\nleaves:\n  bolt: { out: «four» }\n',
    { path: 'leaves.bolt.out', found: 'four' },
  ],
  [
    'a title that is a number',
    'procedure: p\ntitle: «12»\n',
    { path: 'title', expected: 'text', found: '12' },
  ],
];

function named([name, source, ...told]: Case) {
  return { name, source, told };
}

function check(
  facts: readonly SourceFact[],
  spans: readonly { start: number; end: number }[],
  told: readonly Told[],
) {
  expect(facts.map(({ place }) => spanOf(place))).toEqual(spans);
  facts.forEach((fact, i) => {
    for (const [member, wanted] of Object.entries(told[i] ?? {})) {
      const actual = Object.entries(fact).find(([name]) => name === member)?.[1];
      if (wanted instanceof RegExp) expect(actual).toMatch(wanted);
      else expect(actual).toBe(wanted);
    }
  });
}

describe.each([
  ['machine', machineSchema, machines],
  ['manual', manualSchema, manuals],
  ['front matter', frontMatterSchema, frontMatters],
] as const)('faults in the YAML of a %s', (_, schema, cases) => {
  test.each(cases.map(named))('$name', ({ source, told }) => {
    const { text, spans } = marked(source);
    expect(told).toHaveLength(spans.length);
    check(readYaml(locator('f.yaml', text), 0, text.length, schema).facts, spans, told);
  });

  test.each(cases.map(named))(
    '$name, further down in a file with CRLF ends',
    ({ source, told }) => {
      const { text, spans } = marked(
        `# T\r\n---\r\n${source.replaceAll('\n', '\r\n')}---\r\nText\r\n`,
      );
      const [start, end] = [10, text.length - 11];
      const { facts } = readYaml(locator('f.md', text), start, end, schema);
      check(
        facts,
        spans,
        told.map(({ reason, ...rest }) => ({
          ...rest,
          ...(reason instanceof RegExp ? { reason } : {}),
        })),
      );
    },
  );
});

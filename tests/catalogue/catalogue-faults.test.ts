import { describe, expect, test } from 'vitest';
import { readManual } from '../../src/catalogue/index.ts';
import { marked, spanOf } from '../source/marked.ts';
import { filesOf, manualOf } from './manual-of.ts';

type Case = readonly [name: string, entries: string, ...facts: object[]];

/** Entries of a machine with the places of the faults between « and », and the facts in the order they are told. */
const cases: readonly Case[] = [
  [
    'a torque in litres',
    'fasteners:\n  b: { name: b, torque: «22 L» }\n',
    { kind: 'unit-wrong-kind', found: 'volume', expected: 'torque', written: '22 L' },
  ],
  [
    'a torque without a unit',
    'fasteners:\n  b: { name: b, torque: "«22»" }\n',
    { kind: 'quantity-wrong', problem: { code: 'unit-missing' } },
  ],
  [
    'an unknown unit in the second stage',
    'fasteners:\n  b: { name: b, torque: [10 N·m, 20 «Qm»] }\n',
    { kind: 'quantity-wrong', written: '20 Qm', problem: { code: 'unit-unknown' } },
  ],
  [
    'a capacity in kilograms',
    'circuits:\n  c: { name: c, fluid: f, capacity: «3 kg» }\n',
    { kind: 'unit-wrong-kind', found: 'mass', expected: 'volume' },
  ],
  [
    'a mass in litres',
    'parts:\n  p: { name: p, mass: «3 L» }\n',
    { kind: 'unit-wrong-kind', found: 'volume', expected: 'mass' },
  ],
  [
    'a pressure in newton metres',
    'circuits:\n  c: { name: c, fluid: f, capacity: 3 L, pressure: «3 N·m» }\n',
    { kind: 'unit-wrong-kind', found: 'torque', expected: 'pressure' },
  ],
  [
    'a share in litres',
    'circuits:\n  c: { name: c, fluid: f, capacity: 3 L, mix: { water: «1 L» } }\n',
    { kind: 'unit-wrong-kind', expected: 'share' },
  ],
  [
    'shares of more than the whole',
    'circuits:\n  c: { name: c, fluid: f, capacity: 3 L, «mix»: { water: 60 %, concentrate: 50 % } }\n',
    { kind: 'mix-over', percent: 110 },
  ],
  [
    'an unknown variant',
    'parts:\n  p: { name: p, when: «fed» = hydraulic }\n',
    { kind: 'condition-wrong', problem: { code: 'unknown-attribute', near: 'feed' } },
  ],
  [
    'an unknown value in quotes',
    'parts:\n  p: { name: p, when: "feed = «hydralic»" }\n',
    { kind: 'condition-wrong', problem: { code: 'unknown-value', near: 'hydraulic' } },
  ],
  [
    'a condition that breaks off',
    'parts:\n  p: { name: p, when: «feed =» }\n',
    { kind: 'condition-wrong', written: 'feed =' },
  ],
  [
    'the same id in two groups',
    'fasteners:\n  x: { name: b }\nparts:\n  «x»: { name: p }\n',
    { kind: 'duplicate-id', id: 'x', what: 'fastener' },
  ],
  [
    'a part that is not there',
    'fasteners:\n  b: { name: b, holds: «anvl» }\nparts:\n  anvil: { name: anvil }\n',
    { kind: 'unknown-item', id: 'anvl', near: 'anvil', machine: 'm' },
  ],
  [
    'one of several that is not there',
    'parts:\n  a: { name: a, behind: [b, «nothing»] }\n  b: { name: b }\n',
    { kind: 'unknown-item', id: 'nothing' },
  ],
  [
    'near names of a fitting kind go first',
    'parts:\n  a: { name: a, hazards: «hot-olis» }\ntools:\n  hot-olif: { name: t }\nhazards:\n  hot-oil: { signal: warning, hazard: h, harm: h, avoid: a }\n',
    { kind: 'unknown-item', near: 'hot-oil' },
  ],
  [
    'a fastener that holds a circuit',
    'fasteners:\n  b: { name: b, holds: «oil» }\ncircuits:\n  oil: { name: oil, fluid: f, capacity: 3 L }\n',
    { kind: 'item-wrong-kind', id: 'oil', found: 'circuit', expected: ['part'], member: 'holds' },
  ],
  [
    'a hose on a fastener',
    'connections:\n  h: { name: h, type: hose, on: «b» }\nfasteners:\n  b: { name: b }\n',
    { kind: 'item-wrong-kind', member: 'on', expected: ['part'] },
  ],
  [
    'a hose of a part',
    'connections:\n  h: { name: h, type: hose, circuit: «p» }\nparts:\n  p: { name: p }\n',
    { kind: 'item-wrong-kind', member: 'circuit', expected: ['circuit'] },
  ],
  [
    'a drain that is a tool',
    'circuits:\n  c: { name: c, fluid: f, capacity: 3 L, drain: «t» }\ntools:\n  t: { name: t }\n',
    { kind: 'item-wrong-kind', member: 'drain' },
  ],
  [
    'an energy that isolates itself',
    'energy:\n  e: { name: e, type: electrical, isolate-before: «e» }\n',
    { kind: 'item-wrong-kind', member: 'isolate-before', found: 'energy' },
  ],
  [
    'an aid that blocks a fastener',
    'aids:\n  a: { name: a, blocks: «b» }\nfasteners:\n  b: { name: b }\n',
    { kind: 'item-wrong-kind', member: 'blocks' },
  ],
  [
    'a hazard raised by a hazard',
    'hazards:\n  h: { signal: warning, hazard: h, harm: h, avoid: a, raised-by: [{ item: «h» }] }\n',
    { kind: 'item-wrong-kind', member: 'raised-by' },
  ],
  [
    'a hazard raised by an unknown verb',
    'hazards:\n  h: { signal: warning, hazard: h, harm: h, avoid: a, raised-by: [{ verb: «remvoe», item: p }] }\nparts:\n  p: { name: p }\n',
    { kind: 'verb-unknown', verb: 'remvoe', near: 'remove' },
  ],
  [
    'a home that is no position',
    'controls:\n  c: { name: c, positions: [set, released], home: «free» }\n',
    { kind: 'control-home-unknown', home: 'free', positions: ['set', 'released'] },
  ],
  [
    'a pattern with too few places',
    'fasteners:\n  b: { name: b, count: 8, «pattern»: { rows: [3, 4] } }\n',
    { kind: 'pattern-count', positions: 7, count: 8 },
  ],
  [
    'a pattern with too many places at each instance',
    'fasteners:\n  b: { name: b, count: 5, each: [left, right], «pattern»: { circle: 10 } }\n',
    { kind: 'pattern-count', positions: 10, count: 5 },
  ],
  [
    'a rectangle with its corners counted once too often',
    'fasteners:\n  b: { name: b, count: 14, «pattern»: { rectangle: [4, 3] } }\n',
    { kind: 'pattern-count', positions: 10, count: 14 },
  ],
  [
    'two bolts in one place',
    'fasteners:\n  b: { name: b, count: 3, «pattern»: { positions: [[0, 0], [1, 0], [0, 0]] } }\n',
    { kind: 'pattern-overlap', first: 1, second: 3 },
  ],
  [
    'a torque wrench of no length',
    'tools:\n  w: { name: w, length: «0 mm» }\n',
    { kind: 'tool-length-wrong', written: '0 mm', member: 'length', item: 'w' },
  ],
  [
    'an extension of a negative length',
    'tools:\n  c: { name: c, extension: «-45 mm» }\n',
    { kind: 'tool-length-wrong', written: '-45 mm', member: 'extension', item: 'c' },
  ],
  [
    'a torque wrench whose length is a torque',
    'tools:\n  w: { name: w, length: «60 N·m» }\n',
    { kind: 'unit-wrong-kind', found: 'torque', expected: 'length' },
  ],
  [
    'two covers behind each other',
    'parts:\n  a: { name: a, behind: «b» }\n  b: { name: b, behind: a }\n',
    { kind: 'precedence-cycle', chain: [{ item: 'a' }, { item: 'b' }] },
  ],
  [
    'a bolt behind the cover that it holds',
    'fasteners:\n  f: { name: f, holds: p, behind: «p» }\nparts:\n  p: { name: p }\n',
    { kind: 'precedence-cycle', chain: [{ item: 'f' }, { item: 'p' }] },
  ],
  [
    'a hose behind the part that it belongs to',
    'connections:\n  h: { name: h, type: hose, on: p, behind: «p» }\nparts:\n  p: { name: p }\n',
    { kind: 'precedence-cycle', chain: [{ item: 'h' }, { item: 'p' }] },
  ],
  [
    'a part behind itself',
    'parts:\n  a: { name: a, behind: «a» }\n',
    { kind: 'precedence-cycle', chain: [{ item: 'a' }] },
  ],
  [
    'an assembly that is part of its part',
    'parts:\n  a: { name: a, in: «b» }\n  b: { name: b, in: a }\n',
    { kind: 'precedence-cycle', chain: [{ item: 'a' }, { item: 'b' }] },
  ],
];

function named([name, source, ...told]: Case) {
  return { name, source, told };
}

const manual = 'title: T\nvariants:\n  feed: [manual, hydraulic]\n';
const head = 'machine: m\nname: M\n';

test.each(cases.map(named))('$name', ({ source, told }) => {
  const { text, spans } = marked(head + source);
  const { facts } = manualOf(text, manual);
  expect(facts).toMatchObject(told);
  expect(facts.map(({ place }) => spanOf(place))).toEqual(spans);
  expect(facts.every(({ place }) => place.file === 'machines/m.yaml')).toBe(true);
});

describe('manual.yaml', () => {
  const manuals: readonly Case[] = [
    [
      'a kind of quantity that there is not',
      'title: T\nunits:\n  «torqe»: N·m\n',
      { kind: 'units-wrong', problem: { code: 'kind-unknown', kind: 'torqe' } },
    ],
    [
      'a unit of another kind',
      'title: T\nunits:\n  torque: «[L, N·m]»\n',
      { kind: 'units-wrong', problem: { code: 'policy-unit-of-other-kind' } },
    ],
    [
      'a value twice',
      'title: T\nvariants:\n  feed: [a, b, «a»]\n',
      { kind: 'variants-wrong', problem: { code: 'duplicate-value', value: 'a' } },
    ],
    [
      'a value twice, with a name',
      'title: T\nvariants:\n  feed: { name: Feed, values: [a, b, «b»] }\n',
      { kind: 'variants-wrong', problem: { code: 'duplicate-value', value: 'b' } },
    ],
    [
      'an exclusion of an unknown value',
      'title: T\nvariants:\n  feed: [a, b]\nnever: [«feed = a & feed = b», feed = «c»]\n',
      { kind: 'variants-wrong', problem: { code: 'constraint', problem: { code: 'never-true' } } },
      {
        kind: 'variants-wrong',
        problem: { code: 'constraint', problem: { code: 'unknown-value' } },
      },
    ],
    [
      'an exclusion that breaks off',
      'title: T\nnever: [«"feed ="»]\n',
      { kind: 'condition-wrong', written: 'feed =' },
    ],
    [
      'no machine left',
      'title: T\nvariants:\n  feed: [a, b]\nnever: [feed = a, «feed = b»]\n',
      { kind: 'variants-wrong', problem: { code: 'no-machine-left' } },
    ],
    [
      'a default torque in bar',
      'title: T\ndefault-torques:\n  - { thread: M8, torque: «3 bar» }\n',
      { kind: 'unit-wrong-kind', found: 'pressure', expected: 'torque' },
    ],
  ];

  test.each(manuals.map(named))('$name', ({ source, told }) => {
    const { text, spans } = marked(source);
    const { facts } = readManual(filesOf({ 'manual.yaml': text }));
    expect(facts).toMatchObject(told);
    expect(facts.map(({ place }) => spanOf(place))).toEqual(spans);
  });
});

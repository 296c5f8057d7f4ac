import fc from 'fast-check';
import { changedText } from './changed-text.ts';
import { markdownText } from './markdown-text.ts';
import { conditionText, quantityText, valueText } from './pieces.ts';

/** One input of the fuzz: a text of one kind, or a manual of several. */
export type FuzzInput =
  | { readonly kind: 'condition' | 'quantity'; readonly text: string }
  /** `isShown`: pages and reports are made of it as well. */
  | {
      readonly kind: 'yaml' | 'markdown' | 'manual';
      readonly texts: Readonly<Record<string, string>>;
      readonly isShown: boolean;
    };

export const fuzzKinds = ['condition', 'quantity', 'yaml', 'markdown', 'manual'] as const;

const smallManual = `title: Pump
units: { torque: [N·m, lbf·ft] }
variants:
  feed: { values: [hydraulic, belt] }
  winch: { values: [no, yes] }
never: [winch & feed = belt]
`;

const smallMachine = `machine: pump
name: Pump
fasteners:
  bolt: { name: bolt, count: 8, thread: M10, class: 8.8, torque: [20 N·m, 45 N·m, 90°], holds: cover, pattern: circle }
parts:
  cover: { name: cover, mass: 30 kg, behind: [], hazards: [hot] }
  cup: { name: cup, behind: cover, single-use: true, when: winch }
  pin: { name: pin, each: [left, right] }
circuits:
  oil: { name: oil, fluid: ISO VG 46, capacity: 38 L, drain: bolt, pressure: 2 bar }
controls:
  cock: { name: cock, positions: [open, shut], home: shut }
hazards:
  hot: { signal: warning, hazard: Hot, harm: Burns, avoid: Wait. }
`;

const smallProcedure = `---
procedure: replace-cup
title: Replace the cup
machine: pump
when: feed = hydraulic
---

Do [make safe](b.md) first.

## Removal

1. ::hazard{of=hot}

   :drain{item=oil}
2. :remove{item=bolt}, then :remove[lift the cover off]{item=cover}.
   ::step{#off people=2 time="10 min"}
3. :remove{item=cup when=winch}.

:::if[the pin is worn]
1. :replace{item=pin each=left}
:::

## Installation

1. :install[Push the new cup in]{item=cup new}.
2. :install{item=cover}. :torque{item=bolt}
   ::step{needs=off}
3. :fill{item=oil amount="38 L"}.
`;

const texts = { 'manual.yaml': smallManual, 'machines/pump.yaml': smallMachine };
const sound = { ...texts, 'procedures/a.md': smallProcedure };
const front = smallProcedure.slice(0, smallProcedure.indexOf('Do [make safe]'));

const yamlLine = fc
  .tuple(
    fc.constantFrom('', '', '  ', '    ', '- ', '? ', '\t'),
    fc.constantFrom(
      'title',
      'units',
      'variants',
      'never',
      'rules',
      'fasteners',
      'parts',
      'bolt',
      'torque',
      'count',
      'pattern',
      'when',
      'limits',
      '<<',
      '__proto__',
      '""',
      '&a k',
      '*a',
    ),
    fc.constantFrom(': ', ': ', ':', ' '),
    fc.oneof(
      valueText,
      fc.constantFrom(
        '{ name: a, count: 1e9 }',
        '[a, b, *a]',
        '&a [*a]',
        '{ values: [a, a] }',
        '"\\ud800"',
        '"\\u0000"',
        '|\n  x',
        '!!binary x',
        '2026-01-01',
        '0o17',
        '.inf',
        '.nan',
        '[0..1e9]',
      ),
    ),
    fc.constantFrom('\n', '\n', '\r\n', '\n---\n', ' # x\n'),
  )
  .map((parts) => parts.join(''));
const yamlText = fc.array(yamlLine, { maxLength: 12 }).map((lines) => lines.join(''));

const isShown = fc.nat({ max: 7 }).map((one) => one === 0);

const yaml = fc
  .tuple(fc.constantFrom('manual.yaml', 'machines/pump.yaml'), isShown)
  .chain(([file, shown]) =>
    fc
      .oneof(
        changedText(sound[file]),
        yamlText,
        yamlText.map((more) => sound[file] + more),
      )
      .map(
        (text): FuzzInput => ({ kind: 'yaml', texts: { ...texts, [file]: text }, isShown: shown }),
      ),
  );

const markdown = fc
  .tuple(
    fc.oneof(
      changedText(smallProcedure),
      markdownText.map((body) => front + body),
      markdownText,
    ),
    isShown,
  )
  .map(
    ([text, shown]): FuzzInput => ({
      kind: 'markdown',
      texts: { ...texts, 'procedures/a.md': text },
      isShown: shown,
    }),
  );

const manual = fc
  .record({
    settings: fc.oneof(fc.constant(smallManual), changedText(smallManual)),
    machine: fc.oneof(fc.constant(smallMachine), changedText(smallMachine)),
    one: fc.oneof(
      changedText(smallProcedure),
      markdownText.map((body) => front + body),
    ),
    other: markdownText,
  })
  .map(
    ({ settings, machine, one, other }): FuzzInput => ({
      kind: 'manual',
      texts: {
        'manual.yaml': settings,
        'machines/pump.yaml': machine,
        'procedures/a.md': one,
        'procedures/b.md': `---\nprocedure: make-safe\ntitle: Make safe\nmachine: pump\n---\n\n${other}::perform{procedure=replace-cup part=removal}\n`,
      },
      isShown: true,
    }),
  );

/** Mostly short texts, which are quick; each kind often enough. */
export const fuzzInput: fc.Arbitrary<FuzzInput> = fc.oneof(
  { weight: 42, arbitrary: conditionText.map((text): FuzzInput => ({ kind: 'condition', text })) },
  { weight: 42, arbitrary: quantityText.map((text): FuzzInput => ({ kind: 'quantity', text })) },
  { weight: 7, arbitrary: yaml },
  { weight: 8, arbitrary: markdown },
  { weight: 1, arbitrary: manual },
);

/** The inputs of one batch: the same for the same number, whatever was drawn before. */
export const batchOf = (seed: number, size: number): readonly FuzzInput[] =>
  fc.sample(fuzzInput, { seed, numRuns: size });

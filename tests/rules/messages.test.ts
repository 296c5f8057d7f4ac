import { describe, expect, test } from 'vitest';
import type { Finding } from '../../schemas/finding.ts';
import { check, onePage } from '../support/manual.ts';

const items = `
fasteners:
  screw: { name: screw, count: 2, torque: 9 N·m }
  bolt: { name: bolt, count: 8, torque: 22 N·m }
parts:
  anvil: { name: anvil }
  pads: { name: brake pads }
  gas: { name: gas }
  shim: { name: shim }
aids:
  stand: { name: stand, count: 2 }
  pin: { name: lock pin }
`;

const findings = (files: Readonly<Record<string, string>>): readonly Finding[] =>
  check(files).report.findings;

/** What a rule says of a body, message and help. */
function said(rule: string, body: string, front = ''): string[] {
  const found = findings({ 'procedures/example.md': onePage(items, body, front) });
  return words(found, rule);
}

const words = (found: readonly Finding[], rule: string): string[] =>
  found.filter((one) => one.rule === rule).map(({ message, help }) => `${message} / ${help ?? ''}`);

describe('grammar', () => {
  test.each([
    ['1. :remove{item=screw}', 'Both screws are still out at the end'],
    ['1. :remove{item=bolt}', 'All 8 bolts are still out at the end'],
    ['1. :remove{item=screw qty=1}', '1 of 2 screws is still out at the end'],
    ['1. :remove{item=pads}', 'The brake pads are still out at the end'],
    ['1. :remove{item=gas}', 'The gas is still out at the end'],
  ])('%s: %s', (body, message) => {
    expect(said('left-out', body)).toEqual([expect.stringMatching(`^${message} / `)]);
  });

  test('a verb and its particle go around "it" and "them"', () => {
    const help = said('state-unfit', '1. :discard{item=anvil}\n2. :discard{item=pads}');
    expect(help).toEqual([
      'The anvil cannot be thrown away here: it is still in, not out / Take it out first with `:remove{item=anvil}`, or take this action out.',
      'The brake pads cannot be thrown away here: they are still in, not out / Take them out first with `:remove{item=pads}`, or take this action out.',
    ]);
  });

  test('what is not fitted is not "not fitted already"', () => {
    const [two = '', one = ''] = said(
      'in-without-out',
      '1. :withdraw{item=stand}\n2. :withdraw{item=pin}',
    );
    expect(two).toMatch(/^The 2 stands are to be taken away here, but are not fitted \//);
    expect(one).toMatch(/^The lock pin is to be taken away here, but is not fitted \//);
  });

  test('several pieces are worked on', () => {
    const manual = 'title: T\nvariants: { feed: [hydraulic, manual] }\n';
    const text = onePage(
      'fasteners:\n  screw: { name: screw, count: 2, when: feed = manual }',
      '1. :check{item=screw}',
    );
    const found = findings({ 'manual.yaml': manual, 'procedures/example.md': text });
    expect(words(found, 'item-absent')).toEqual([
      expect.stringMatching(
        '^The 2 screws are worked on here in variants that do not have them / ',
      ),
    ]);
  });

  test('what ::reverse cannot know', () => {
    const body =
      '## Removal\n\n1. :measure{item=shim}\n2. :remove{item=anvil}\n3. :discard{item=anvil}\n\n## Installation\n\n::reverse{of=removal}\n';
    expect(said('reverse-asks', body)).toEqual([
      expect.stringMatching(
        '^The anvil is thrown away in `removal`, and `::reverse` cannot know which new one goes in / ',
      ),
      expect.stringMatching(
        '^The shim is measured in `removal`, and `::reverse` cannot know what the reading asks for on the way back / ',
      ),
    ]);
  });
});

describe('blocks and colons', () => {
  test('an inner block that takes the closing line of the outer one: one finding, with the colons to write', () => {
    const body =
      'Text.\n\n:::danger{hazard="Belt" harm="Crushed hand"}\nKeep off.\n\n:::if[it runs]\n1. Wait.\n:::\n:::\n';
    const found = findings({ 'procedures/example.md': onePage(items, body) });
    const [block] = found.filter(({ rule }) => rule === 'directive-misplaced');
    const line = block?.start.line ?? 0;
    expect(words(found, 'directive-misplaced')).toEqual([
      `\`:::if\` has no line that closes it: the next one closes \`:::danger\` of line ${line - 3} / Give \`:::danger\` in line ${line - 3} four colons, \`::::danger\`, and its closing line as many, so that this block can stand inside it.`,
    ]);
    expect(block?.related).toMatchObject([
      { start: { line: line + 3 }, label: 'so that this line is left over' },
    ]);
    const mended = body.replace(':::danger', '::::danger').replace(/:::\n$/, '::::\n');
    expect(said('directive-misplaced', mended)).toEqual([]);
  });

  test('a block that was never closed before the next one', () => {
    const body =
      ':::danger{hazard="Belt" harm="Crushed hand"}\nKeep off.\n\n:::if[it runs]\n1. Wait.\n:::\n';
    expect(said('directive-misplaced', body)).toEqual([
      expect.stringMatching(/ \/ Close `:::danger` with a line `:::` before this one; or, /),
    ]);
  });

  test.each([
    [':::danger{hazard=a harm=b}\nText.', '`:::danger` has no line that closes it'],
    [':::perform{procedure=example}\n:::', '`:::perform` has the wrong number of colons'],
    [
      '::: danger{hazard=a harm=b}\nText.\n:::',
      '`::: danger` is written with a space after the colons',
    ],
    ['Text.\n\n:::', 'This line closes no block'],
    [':::or[a]\n1. Wait.\n:::', '`:::or` has no `:::either` before it'],
    ['1. Wait.\n   ::step{#a}\n   ::step{#b}', '`::step` stands in this step already'],
    ['Wait. ::step{#a}', '`::step` cannot stand in the middle of a line'],
  ])('%j: %s', (body, message) => {
    expect(said('directive-misplaced', body)).toEqual([
      expect.stringMatching(`^${message} / (?:Write|Add|Take|Its place) `),
    ]);
  });

  test('what could not be read is told once, and not again at its closing line', () => {
    const found = findings({
      'procedures/example.md': onePage(items, ':::torque{item=bolt\nText.\n:::\n'),
    });
    const errors = found.filter(({ level }) => level === 'error');
    expect(errors.map(({ rule, message }) => `${rule} ${message}`)).toEqual([
      'attribute-wrong The braces of `:::torque` cannot be read',
    ]);
  });

  test('an element of HTML is told once, not again at its end', () => {
    expect(said('raw-html', '1. Look <b>well</b> and <i>long</i>.\n\n</p>')).toHaveLength(3);
  });
});

describe('attributes', () => {
  test.each([
    ['1. :check{itme=bolt}', '`itme` is no attribute of `check` / Perhaps `item` is meant.'],
    ['1. :check[it]', '`item` of `:check` is missing; .* / Add `item=…` to its braces.'],
    [
      '1. :check{item=bolt when=""}',
      '`when` of `check` is empty; a condition, such as feed = hydraulic, is expected / ',
    ],
    [
      '1. :check {item=bolt}',
      'The braces of `:check` cannot be read / Write brackets and braces directly after it',
    ],
    [
      ':::if\n1. Wait.\n:::',
      'The part in square brackets of `:::if` is missing; .* / Write `:::if\\[…\\]`.',
    ],
    [
      ':::danger[a]{hazard=a harm=b}\nText.\n:::',
      '`danger` takes no words in square brackets, but has “a” / Take them out',
    ],
  ])('%j', (body, message) => {
    expect(said('attribute-wrong', body)).toEqual([expect.stringMatching(`^${message}`)]);
  });
});

describe('YAML', () => {
  test.each([
    ['title: T\nunitz: 1\n', '`unitz` is no key of this file / Perhaps `units` is meant.'],
    ['title: ""\n', '`title` is empty; text that is not empty is expected / '],
    ['- title\n', 'This file is a list; keys and values are expected / '],
    ['edition: 2\n', 'This file has no `title`; text is expected / '],
    [
      'title: T\nvariants: { feed: { values: [a, b], nmae: x } }\n',
      '`nmae` is no key of `variants.feed` / Perhaps `name` is meant.',
    ],
  ])('%j', (manual, message) => {
    expect(words(findings({ 'manual.yaml': manual }), 'yaml-shape')).toEqual([message]);
  });

  test('an empty value says so, and a key that cannot be one', () => {
    const own =
      'fasteners:\n  Big Bolt: { name: bolt, count: 2 }\n  nut: { name: nut, count: 2, torque: "" }';
    const found = findings({ 'procedures/example.md': onePage(own, '1. Wait.') });
    expect(words(found, 'yaml-shape').map((one) => one.split('; ')[0])).toEqual([
      '`Big Bolt` cannot be a key of `items.fasteners`',
      '`items.fasteners.nut.torque` is empty',
    ]);
  });

  test('a kind of unit that there is not is marked at its key', () => {
    const found = findings({ 'manual.yaml': 'title: T\nunits:\n  lenght: mm\n' });
    expect(found.filter(({ rule }) => rule === 'unit-kind')).toMatchObject([
      {
        message: '“lenght” is not a kind of quantity',
        help: 'Perhaps `length` is meant.',
        start: { line: 3, column: 3 },
      },
    ]);
  });

  test('a unit in a list of one stage is not "Stage 1"', () => {
    const own = 'fasteners:\n  nut: { name: nut, count: 2, torque: 22 Nmn }';
    const found = findings({ 'procedures/example.md': onePage(own, '1. Wait.') });
    expect(words(found, 'unit-unknown')).toEqual([
      'The unit “Nmn” is not known / Did you mean “N·m”?',
    ]);
  });
});

describe('one slip is told once', () => {
  const page = (front: string, body: string): string =>
    `---\nprocedure: example\ntitle: Example\n${front}---\n\n${body}`;

  test('a machine that there is not, and not all that the procedure names of it', () => {
    const found = findings({
      'machines/mill.yaml': 'machine: mill\nname: Mill\nparts:\n  cover: { name: cover }\n',
      'procedures/example.md': page(
        'machine: mil\nstarts: { cover: out }\n',
        '1. :install{item=cover}\n2. :check{item=cover}\n',
      ),
    });
    expect(found.filter(({ level }) => level === 'error').map(({ rule }) => rule)).toEqual([
      'unknown-machine',
    ]);
  });

  test('a faulty `variants`, and not every condition that needs it', () => {
    const found = findings({
      'manual.yaml': 'title: T\nvariants: { feed: 1 }\n',
      'procedures/example.md': page('when: feed = manual\n', 'Text.\n'),
    });
    expect(found.map(({ rule }) => rule)).toEqual(['yaml-shape']);
    const broken = findings({
      'manual.yaml': 'title: T\nvariants: { feed: 1 }\n',
      'procedures/example.md': page('when: feed =\n', 'Text.\n'),
    });
    expect(broken.map(({ rule }) => rule)).toEqual(['yaml-shape', 'condition-wrong']);
  });

  test('an item in `starts` that there is not, at its id', () => {
    const found = findings({
      'procedures/example.md': page(
        'starts: { covr: out }\nitems: { parts: { cover: { name: cover } } }\n',
        '1. :check{item=cover}\n',
      ),
    });
    const errors = found.filter(({ level }) => level === 'error');
    expect(errors.map(({ rule, help, start }) => [rule, help, start.line, start.column])).toEqual([
      ['unknown-item', 'Perhaps `cover` is meant.', 4, 11],
    ]);
  });

  test('a state in `starts` that is misspelt', () => {
    expect(said('unknown-state', '1. Wait.', 'starts: { anvil: asid }\n')).toEqual([
      'The anvil cannot be `asid`, as `starts` says / Perhaps `aside` is meant.',
    ]);
  });
});

describe('conditions, instances and rings, each at its place', () => {
  const manual = 'title: T\nvariants: { feed: [hydraulic, manual], engine: [petrol, diesel] }\n';
  const at = (when: string): string[] => {
    const text = onePage(items, `1. :check{item=anvil when="${when}"}`);
    return findings({ 'manual.yaml': manual, 'procedures/example.md': text })
      .filter(({ rule }) => rule === 'condition-wrong')
      .map(({ message, help, start, end }) => {
        const line = text.split('\n')[start.line - 1] ?? '';
        return `${line.slice(start.column - 1, end.column - 1)}: ${message}. ${help ?? ''}`;
      });
  };

  test.each([
    [
      'feed = hydraulic & feed = manual',
      'feed = hydraulic & feed = manual: The condition is false for every machine of this manual. Correct it, or take out what it guards.',
    ],
    [
      'feed = hydraulic | feed = manual',
      'feed = hydraulic | feed = manual: The condition is true for every machine of this manual. Correct it, or leave it out.',
    ],
    [
      'fed = manual',
      'fed: “fed” is not a variant attribute of this manual. Perhaps “feed” is meant.',
    ],
    [
      'feed = hydralic',
      'hydralic: “hydralic” is not a value of “feed”. Perhaps “hydraulic” is meant.',
    ],
    [
      'petrol',
      'petrol: “petrol” is not a variant attribute of this manual. It is a value: write “engine = petrol”.',
    ],
  ])('%s', (when, told) => {
    expect(at(when)).toEqual([told]);
  });

  test('a "never" that leaves no machine', () => {
    const never = `${manual}never:\n  - feed = hydraulic\n  - feed = manual\n`;
    expect(
      findings({ 'manual.yaml': never }).filter(({ rule }) => rule === 'variants-wrong'),
    ).toMatchObject([
      {
        message: 'With this “never” line no machine is left, so it is not applied',
        start: { line: 5, column: 5 },
      },
    ]);
  });

  test('an instance that the item does not have', () => {
    const own = 'parts:\n  pads: { name: brake pads, each: [left, right] }\n  lid: { name: lid }';
    const body = '1. :check{item=pads each=lefft}\n2. :check{item=lid each=left}';
    const found = findings({ 'procedures/example.md': onePage(own, body) });
    expect(words(found, 'unknown-state')).toEqual([
      '`pads` has no instance `lefft` / Perhaps `left` is meant.',
      '`lid` has no instance `left` / `lid` has no `each`; take it out.',
    ]);
  });

  test('procedures that perform each other say where each performs the next', () => {
    const performing = (id: string, other: string): string =>
      `---\nprocedure: ${id}\ntitle: Job ${id}\n---\n\n1. ::perform{procedure=${other}}\n`;
    const [ring, ...more] = findings({
      'procedures/a.md': performing('a', 'b'),
      'procedures/b.md': performing('b', 'a'),
    });
    expect(more).toEqual([]);
    expect(ring?.related[0]?.label).toContain('`a` performs `b` here');
  });

  test('a ::reverse in the section that it is to undo', () => {
    const body = '## Removal\n\n1. :check{item=anvil}\n\n::reverse{of=removal}\n';
    expect(said('reverse-of-later', body)).toEqual([
      '`::reverse` stands in `removal` itself, the section that it is to undo / Put a heading before it, such as `## Reassembly`.',
    ]);
  });
});

describe('a link to a section that there is not', () => {
  const body = '## Removal\n\nText.\n\n## Installation\n\nText.\n\n## Check\n\n';
  test.each([
    ['remvoal', 'Perhaps `removal` is meant; there are also `installation` and `check`.'],
    ['remove-the-anvil', 'There are `removal`, `installation` and `check`.'],
  ])('#%s', (anchor, help) => {
    expect(said('broken-link', `${body}[there](#${anchor})`)).toEqual([
      `The link \`#${anchor}\` leads to no section or step: there is no \`${anchor}\` / ${help}`,
    ]);
  });

  test('in a file without any', () => {
    const found = findings({
      'procedures/example.md': onePage(items, '[there](b.md#removal)'),
      'procedures/b.md': '---\nprocedure: b\ntitle: B\n---\n\nText.\n',
    });
    expect(words(found, 'broken-link')[0]).toContain('has neither headings nor named steps');
  });
});

import { describe, expect, test } from 'vitest';
import { untrackedSchema } from '../../schemas/untracked.ts';
import { countedManual, untrackedAsText, untrackedReport } from '../../src/adopt/index.ts';
import { check, filesOf, onePage } from '../support/manual.ts';

const path = 'procedures/example.md';
const reported = (texts: Readonly<Record<string, string>>) =>
  untrackedReport(check(texts).linked, (file) => texts[file] ?? '');
const page = (items: string, body: string) => reported({ [path]: onePage(items, body) });
const told = (items: string, body: string) =>
  page(items, body).proposals.map(({ directive, why }) =>
    why ? `${directive} ${why}` : directive,
  );

const items = `
fasteners:
  cover-bolt: { name: cover bolt, count: 8, thread: M8, torque: 20 N·m }
  side-bolt: { name: side bolt, count: 2, tightness: snug }
  drain-plug: { name: oil drain plug, torque: 20 N·m }
parts:
  cover: { name: top cover, also-called: [lid] }
  hood: { name: hood }
  wheel: { name: wheel, each: [left, right] }
connections:
  hose: { name: return hose, type: hose }
circuits:
  oil: { name: gear oil, fluid: ISO VG 220, capacity: 1 L }
energy:
  mains: { name: mains, type: electrical }
controls:
  brake: { name: brake, positions: [set, released], home: set }
  engine: { name: engine, positions: [stopped, running], home: stopped }
aids:
  stand: { name: axle stand, count: 2 }
tools:
  pan: { name: tray }
`;

describe('words of work', () => {
  test.for([
    ['Remove the top cover.', ':remove[Remove the top cover]{item=cover}'],
    ['Take the lid off carefully.', ':remove[Take the lid off]{item=cover}'],
    ['Loosen the cover bolts.', ':loosen[Loosen the cover bolts]{item=cover-bolt}'],
    ['Remove four cover bolts.', ':remove[Remove four cover bolts]{item=cover-bolt qty=4}'],
    ['Remove all 8 cover bolts.', ':remove[Remove all 8 cover bolts]{item=cover-bolt}'],
    ['Tighten the side bolts.', ':tighten[Tighten the side bolts]{item=side-bolt}'],
    ['Tighten the cover bolts.', ':torque[Tighten the cover bolts]{item=cover-bolt}'],
    ['Disconnect the hose.', ':disconnect[Disconnect the hose]{item=hose}'],
    ['Remove the drain plug.', ':remove[Remove the drain plug]{item=drain-plug}'],
    ['Drain the gear oil.', ':drain[Drain the gear oil]{item=oil}'],
    ['Release the brake.', ':set[Release the brake]{item=brake to=released}'],
    ['Start the engine.', ':set[Start the engine]{item=engine to=running}'],
    ['Remove the left wheel.', ':remove[Remove the left wheel]{item=wheel each=left}'],
    ['Put one axle stand under the frame.', ':fit[Put one axle stand]{item=stand qty=1}'],
    ['Check the hood for cracks.', ':check[Check the hood]{item=hood}'],
    ['Remove the bolts.', ':remove[Remove the bolts]{item=…} several-fit'],
    ['Remove the top covre.', ':remove[Remove the top covre]{item=…} spelled-alike'],
    ['Install the new hood.', ':install[Install the new hood]{item=hood new} still-in'],
    ['Fit a new V-belt.', ':install[Fit a new V-belt]{item=v-belt new}'],
    ['Remove the **top** cover.', ':remove[Remove the top cover]{item=cover} signs'],
    ['Reinstall the hood.', ':install[Reinstall the hood]{item=hood} still-in'],
    ['Drain the brake fluid.', ':drain[Drain the brake fluid]{item=brake-fluid} none-fits'],
  ] as const)('%s', ([words, directive]) => {
    expect(told(items, `1. ${words}\n`)).toEqual([directive]);
  });

  test.for([
    'Do not remove the cover.',
    'Wipe the cover.',
    'Check that nobody stands near.',
    'Measure the distance.',
    ':remove[Remove the top cover]{item=cover}.',
    'The cover comes off later.',
  ])('%s is none, or is counted', (words) => {
    expect(told(items, `1. ${words}\n`)).toEqual([]);
  });

  test('what was set aside is returned, not installed', () => {
    expect(told(items, '1. Set aside the hood.\n2. Put the hood back.\n')).toEqual([
      ':set-aside[Set aside the hood]{item=hood}',
      ':return[Put the hood back]{item=hood}',
    ]);
  });

  test('words over two lines stay over two lines', () => {
    const text = onePage(items, '1. Remove the\n   top cover.\n');
    expect(
      countedManual(filesOf({ [path]: text })).files.texts.find((one) => one.path === path)?.text,
    ).toBe(
      text.replace('Remove the\n   top cover', ':remove[Remove the\n   top cover]{item=cover}'),
    );
  });
});

describe('entries that the catalogue lacks', () => {
  const bare = '---\nprocedure: example\ntitle: Example\n---\n\n';
  const entries = (body: string) =>
    reported({ [path]: bare + body }).entries.map(({ section, entry, isWhole }) =>
      [section, entry, ...(isWhole ? [] : ['for the writer'])].join(' '),
    );

  test.for([
    ['Remove the six cover bolts.', 'fasteners cover-bolt: { name: cover bolt, count: 6 }'],
    [
      'Remove the Cover Bolts.',
      'fasteners cover-bolt: { name: Cover Bolt, count: … } for the writer',
    ],
    ['Remove the V-belt.', 'parts v-belt: { name: V-belt }'],
    ['Disconnect the fuel hose.', 'connections fuel-hose: { name: fuel hose, type: hose }'],
    [
      'Drain the coolant.',
      'circuits coolant: { name: coolant, fluid: …, capacity: … } for the writer',
    ],
  ] as const)('%s', ([words, entry]) => {
    expect(entries(`1. ${words}\n`)).toEqual([entry]);
  });

  test('one noun is one entry, with the count that is said once', () => {
    expect(entries('1. Loosen the cover bolts.\n2. Remove the six cover bolts.\n')).toEqual([
      'fasteners cover-bolt: { name: cover bolt, count: 6 }',
    ]);
  });

  test('two counts are a question for the writer', () => {
    expect(entries('1. Remove the 6 cover bolts.\n2. Install the 4 cover bolts.\n')).toEqual([
      'fasteners cover-bolt: { name: cover bolt, count: … } for the writer',
    ]);
  });

  test('what several procedures of a machine name goes into the file of the machine', () => {
    const texts = {
      'machines/mill.yaml':
        'machine: mill\nname: Mill\n\nparts:\n  roll: { name: roll }\n  # the last one\n',
      'procedures/one.md': '---\nprocedure: one\ntitle: One\n---\n\n1. Remove the belt guard.\n',
      'procedures/two.md': '---\nprocedure: two\ntitle: Two\n---\n\n1. Remove the belt guard.\n',
    };
    const { files } = countedManual(filesOf(texts));
    const text = (name: string) => files.texts.find((one) => one.path === name)?.text;
    expect(text('machines/mill.yaml')).toBe(
      'machine: mill\nname: Mill\n\nparts:\n  roll: { name: roll }\n  belt-guard: { name: belt guard }\n  # the last one\n',
    );
    expect(text('procedures/one.md')).toContain(
      '1. :remove[Remove the belt guard]{item=belt-guard}.',
    );
    expect(text('procedures/two.md')).toContain(
      '1. :remove[Remove the belt guard]{item=belt-guard}.',
    );
  });

  test.for([
    [
      'with comments',
      'items:\n  # parts\n  parts:\n    a: { name: a } # the first\n',
      '    b-cover: { name: b cover }',
    ],
    [
      'another section',
      'items:\n  fasteners:\n    nut: { name: nut }\n',
      '  parts:\n    b-cover: { name: b cover }',
    ],
    ['CRLF', 'items:\r\n  parts:\r\n    a:\r\n      name: a\r\n', '    b-cover: { name: b cover }'],
  ] as const)('%s: stands in its section', ([, front, line]) => {
    const newLine = front.includes('\r\n') ? '\r\n' : '\n';
    const text =
      `---\nprocedure: example\ntitle: Example\n${front}---\n\n1. Remove the B cover.\n`.replaceAll(
        /\r?\n/g,
        newLine,
      );
    const { files } = countedManual(filesOf({ [path]: text }));
    const after = files.texts.find((one) => one.path === path)?.text ?? '';
    expect(after.toLowerCase()).toContain(line.replaceAll('\n', newLine));
    expect(after.replaceAll('\r\n', '').includes('\n')).toBe(newLine === '\n');
    expect(check({ [path]: after }).report.findings.map(({ rule }) => rule)).not.toContain(
      'unknown-item',
    );
  });

  test('entries in braces are left alone', () => {
    const text = `---\nprocedure: example\ntitle: Example\nitems: { parts: { a: { name: a } } }\n---\n\n1. Remove the cover.\n`;
    expect(
      countedManual(filesOf({ [path]: text })).files.texts.find((one) => one.path === path)?.text,
    ).toBe(text);
  });
});

test('the report is as its schema says, and is told in words', () => {
  const report = page(items, '1. Remove the bolts. Remove the top cover.\n2. Remove the axle.\n');
  expect(untrackedSchema.parse(report)).toEqual(report);
  expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  expect(untrackedAsText(report)).toMatchInlineSnapshot(`
    "procedures/example.md:28:4  Remove the bolts
        :remove[Remove the bolts]{item=…}
        Several entries fit: cover-bolt (cover bolt), side-bolt (side bolt). Write the id of the one that is meant.

    procedures/example.md:28:22  Remove the top cover
        :remove[Remove the top cover]{item=cover}

    procedures/example.md:29:4  Remove the axle
        :remove[Remove the axle]{item=axle}

    Not in the catalogue yet:
        procedures/example.md  items: parts: axle: { name: axle }

    3 actions in words without a directive: 2 can be written with --write, 1 is for you to decide."
  `);
  expect(untrackedAsText(page(items, '1. Wipe the cover.\n'))).toBe(
    'Every action is counted: no words act without a directive.',
  );
});

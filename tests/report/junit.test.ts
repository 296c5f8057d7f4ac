import { parseXml, XmlElement } from '@rgrove/parse-xml';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  againstBaseline,
  baselineOf,
  type Inspection,
  reportAsJunit,
  subjectsOf,
} from '../../src/report/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { checked, manualFrom } from '../manuals/manual-from.ts';
import { check, filesOf } from '../support/manual.ts';
import { brokenTexts, damagedFrom, door } from './broken-door.ts';
import { junitFaults } from './junit-schema.ts';

const write = (inspection: Inspection, { texts }: Pick<ManualFiles, 'texts'>): string =>
  reportAsJunit(
    inspection.report,
    subjectsOf([...inspection.linked.outlines.byId.values()], texts),
  );

function rootOf(xml: string): XmlElement {
  const { root } = parseXml(xml);
  if (root === null) throw new Error('there is no root');
  return root;
}

const below = (element: XmlElement, name: string): XmlElement[] =>
  element.children.flatMap((child) => {
    if (!(child instanceof XmlElement)) return [];
    return child.name === name ? [child] : below(child, name);
  });

/** Each case as `suite: case ending`. */
function told(texts: Readonly<Record<string, string>>): string[] {
  const root = rootOf(write(check(texts), filesOf(texts)));
  return casesIn(root);
}

const casesIn = (root: XmlElement): string[] =>
  below(root, 'testsuite').flatMap((suite) =>
    below(suite, 'testcase').map((one) => {
      const [ending] = one.children.filter((child) => child instanceof XmlElement);
      return `${suite.attributes.name}: ${one.attributes.name} ${ending?.name ?? 'passed'}`;
    }),
  );

test('any report is well-formed, keeps to the schema, and counts its cases right', async () => {
  const lathe = await manualFrom('lathe');
  fc.assert(
    fc.property(damagedFrom(lathe), (files) => {
      const root = rootOf(write(checked(files), files));
      expect(junitFaults(root)).toEqual([]);
      for (const element of [root, ...below(root, 'testsuite')]) {
        const count = (name: string) => String(below(element, name).length);
        expect(element.attributes).toMatchObject({
          tests: count('testcase'),
          failures: count('failure'),
          errors: '0',
        });
      }
    }),
    { numRuns: 25 },
  );
});

describe('a suite', () => {
  test('stands for each procedure and each other text; those in order have a case that passed', () => {
    const machine = 'machine: lathe\nname: Lathe\nparts:\n  belt: { name: belt }\n';
    expect(
      told({
        'procedures/p.md': door(),
        'procedures/q.md': door({ without: ['4.'], change: [['oil-hinge', 'other']] }),
        'machines/lathe.yaml': machine,
      }),
    ).toEqual([
      'oil-hinge: balances passed',
      'other: left-loose failure',
      'machines/lathe.yaml: is in order passed',
      'machines/lathe.yaml: unused-entry (note) system-out',
      'manual.yaml: is in order passed',
    ]);
  });

  test('stands for a file that cannot be read, too', () => {
    const files = {
      ...filesOf({ 'procedures/p.md': door() }),
      unreadable: [{ path: 'procedures/x.md', reason: 'it is gone' }],
    };
    expect(casesIn(rootOf(write(checked(files), files)))).toContain(
      'procedures/x.md: file-unreadable failure',
    );
  });
});

describe('a case', () => {
  test('tells all findings of its rule, and where each is', () => {
    const body = '1. Remove the cover.\n2. Remove the lid.\n';
    const texts = { 'procedures/p.md': door({ body }) };
    const root = rootOf(write(check(texts), filesOf(texts)));
    const failure = below(root, 'failure').find(
      ({ attributes }) => attributes.type === 'untracked-action',
    );
    expect(failure?.attributes.message).toMatch(/ no directive counts it, and 1 more$/);
    expect(failure?.text.match(/^procedures\/p\.md:\d+:\d+ /gm)).toEqual([
      'procedures/p.md:11:4 ',
      'procedures/p.md:12:4 ',
    ]);
  });

  test('of notes has passed, and says them', () => {
    const texts = {
      ...brokenTexts,
      'manual.yaml': 'title: T\nrules: { left-loose: note, left-out: note }\n',
    };
    expect(told(texts)).toEqual([
      'oil-hinge: balances passed',
      'oil-hinge: left-loose (note) system-out',
      'oil-hinge: left-out (note) system-out',
      'manual.yaml: is in order passed',
    ]);
  });

  test('that is waived is skipped, with the reason', () => {
    const waive = ':::waive{rule=left-loose}\nTightened in the next job.\n:::\n\n1. ';
    const texts = { 'procedures/p.md': door({ without: ['4.'], change: [['1. ', waive]] }) };
    const xml = write(check(texts), filesOf(texts));
    expect(casesIn(rootOf(xml))).toContain('oil-hinge: left-loose (waived) skipped');
    expect(xml).toContain('<skipped message="Waived: Tightened in the next job.">');
  });

  test('that the baseline lists is skipped', () => {
    const inspection = check(brokenTexts);
    const baseline = baselineOf(inspection.report.findings.slice(0, 1));
    const report = againstBaseline(inspection.report, baseline);
    expect(casesIn(rootOf(write({ ...inspection, report }, filesOf(brokenTexts))))).toEqual([
      'oil-hinge: left-out failure',
      'oil-hinge: left-loose (known) skipped',
      'manual.yaml: is in order passed',
    ]);
  });
});

test('characters that XML does not have (XML 1.0, 2.2) and its own signs do no harm', () => {
  const body = '1. Remove the \u0001\uFFFE "cover" & <lid> ]]>.\n';
  const texts = { 'procedures/p.md': door({ body }), 'manual.yaml': 'title: A <"&\'> title\n' };
  const xml = write(check(texts), filesOf(texts));
  const root = rootOf(xml);
  expect(root.attributes.name).toBe('A <"&\'> title');
  for (const character of ['\u0001', '\uFFFE']) expect(xml).not.toContain(character);
  expect(below(root, 'failure').some(({ text }) => text.includes('“Remove the'))).toBe(true);
});

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import type { PhysicalLocation, Region, Result } from 'sarif';
import { describe, expect, test } from 'vitest';
import type { Report } from '../../../schemas/report.ts';
import {
  againstBaseline,
  applyEdits,
  baselineOf,
  fails,
  type Inspection,
  reportAsSarif,
} from '../../../src/report/index.ts';
import { rules } from '../../../src/rules/index.ts';
import type { ManualFiles } from '../../../src/source/index.ts';
import { checked, manualFrom } from '../../manuals/manual-from.ts';
import { check, filesOf } from '../../support/manual.ts';
import { brokenTexts, damagedFrom, door } from '../broken-door.ts';
import { faultsOf, runIn } from './read-sarif.ts';

const described = rules.map(({ id, family, level }) => {
  const page = new URL(`../../../src/rules/${family}/${id}.md`, import.meta.url);
  return { id, family, level, page: readFileSync(page, 'utf8') };
});

function sarifOf({ report, linked }: Inspection, { texts }: ManualFiles, folder = ''): string {
  const { rules: levels } = linked.manual.settings;
  const exitCode = fails(report) ? 1 : 0;
  return reportAsSarif(report, { rules: described, levels, texts, folder, exitCode });
}

const runOf = (texts: Readonly<Record<string, string>>, folder = '') =>
  runIn(sarifOf(check(texts), filesOf(texts), folder));

const printIn = ({ partialFingerprints }: Result): string | undefined =>
  Object.values(partialFingerprints ?? {})[0];

describe('the log', () => {
  test('fits the schema of OASIS for the manuals that there are, and for any damaged one', async () => {
    for (const name of ['demo', 'hand-pump'] as const) {
      const files = await manualFrom(name);
      expect(runIn(sarifOf(checked(files), files)).invocations?.[0]?.exitCode).toBe(0);
    }
    const lathe = await manualFrom('lathe');
    fc.assert(
      fc.property(damagedFrom(lathe), (files) => {
        const log: unknown = JSON.parse(sarifOf(checked(files), files));
        expect(faultsOf(log)).toEqual([]);
        const prints = runIn(JSON.stringify(log)).results.map(printIn);
        expect(new Set(prints).size).toBe(prints.length);
      }),
      { numRuns: 25 },
    );
  });

  test('that is damaged does not fit it', () => {
    const log = JSON.parse(sarifOf(check(brokenTexts), filesOf(brokenTexts)));
    log.runs[0].results[0].level = 'fatal';
    log.runs[0].artifacts[0].location.uri = 'two words';
    expect(faultsOf(log)).toHaveLength(2);
  });

  test('has the exit code, the rules with their words and levels, and what the manual changes of these', () => {
    const run = runOf({
      ...brokenTexts,
      'manual.yaml': 'title: Door\nrules: { left-out: warning, left-open: off }\n',
    });
    expect(run.invocations?.[0]).toMatchObject({ executionSuccessful: true, exitCode: 1 });
    const given = run.tool.driver.rules ?? [];
    expect(given.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
    for (const { shortDescription, fullDescription, help } of given) {
      for (const part of [shortDescription, fullDescription, help])
        expect(part?.text).toMatch(/\S/);
    }
    const overrides = run.invocations?.[0]?.ruleConfigurationOverrides ?? [];
    const told = overrides.map(({ descriptor, configuration }) => [
      given[descriptor.index ?? -1]?.id,
      configuration,
    ]);
    expect(new Map(told.map(([id, how]) => [id, how]))).toEqual(
      new Map<unknown, unknown>([
        ['left-out', { level: 'warning' }],
        ['left-open', { enabled: false }],
      ]),
    );
  });

  test('lists the texts with encoded addresses, below the folder in which the check was run', () => {
    const texts = {
      'procedures/öl 100%/a#b.md': door(),
      'machines/a+b.yaml': 'machine: a\nname: A\n',
    };
    const run = runOf(texts, 'my manual/');
    // RFC 3986, 2.1: UTF-8 bytes as %HH; what a reader of addresses makes of them are the names again.
    expect(run.artifacts?.map(({ location }) => location?.uri)).toEqual([
      'my%20manual/machines/a%2Bb.yaml',
      'my%20manual/manual.yaml',
      'my%20manual/procedures/%C3%B6l%20100%25/a%23b.md',
    ]);
    for (const { location } of run.artifacts ?? []) {
      const { pathname } = new URL(location?.uri ?? '', 'file:///x/');
      expect(decodeURIComponent(pathname)).toMatch(/^\/x\/my manual\/\S/);
    }
    expect(Object.keys(run.originalUriBaseIds ?? {})).toEqual(['%SRCROOT%']);
  });
});

describe('a result', () => {
  test('has rule, level, words and place in lines and in characters', () => {
    const [first] = runOf(brokenTexts).results;
    expect(first).toMatchObject({
      ruleId: 'left-loose',
      level: 'error',
      message: {
        text: expect.stringMatching(/^All 4 plate screws are still loose at the end\. Add /),
      },
    });
    expect(rules[first?.ruleIndex ?? -1]?.id).toBe('left-loose');
    expect(first?.locations?.[0]?.logicalLocations).toEqual([
      { name: 'oil-hinge', kind: 'procedure' },
    ]);
  });

  /** The text of a region, once by its characters and once by its lines and columns (SARIF 2.1.0, 3.30). */
  function bothWays(text: string, region: Region): [string, string] {
    const plain = text.replace(/^\uFEFF/, '');
    const { charOffset = 0, charLength = 0 } = region;
    const starts = [0, ...[...plain.matchAll(/\n/g)].map(({ index }) => index + 1)];
    const at = (line = 0, column = 0) => (starts[line - 1] ?? 0) + column - 1;
    return [
      plain.slice(charOffset, charOffset + charLength),
      plain.slice(at(region.startLine, region.startColumn), at(region.endLine, region.endColumn)),
    ];
  }

  test.each([
    ['plain', (text: string) => text],
    ['with CRLF', (text: string) => text.replaceAll('\n', '\r\n')],
    ['with a byte order mark', (text: string) => `\uFEFF${text}`],
    ['with letters of two code units', (text: string) => text.replace('Oil the', '🔩🔩 the')],
  ])('marks the same text by offset and by line, in a text %s', (_, change) => {
    const text = change(door({ without: ['4.'] }).replace('Loosen the', '🔩 Loosen the'));
    const { results } = runOf({ 'procedures/p.md': text });
    const region = results[0]?.locations?.[0]?.physicalLocation?.region ?? {};
    const [byOffset, byLine] = bothWays(text, region);
    expect(byOffset).toBe(':loosen[🔩 Loosen the plate screws]{item=plate-screw}');
    expect(byLine).toBe(byOffset);
  });

  test('tells its story from the removal to the end', () => {
    const texts = {
      'procedures/p.md': door({
        change: [['4. :torque{item=plate-screw}', '4. :torque{item=plate-screw qty=1}']],
      }),
    };
    const [result] = runOf(texts).results;
    const stops = result?.codeFlows?.[0]?.threadFlows[0]?.locations ?? [];
    expect(
      stops.map(({ location, executionOrder }) => [
        executionOrder,
        location?.physicalLocation?.region?.startLine,
        location?.message?.text,
      ]),
    ).toEqual([
      [1, 11, 'it begins here.'],
      [2, 14, 'only 1 of 4 torqued here.'],
      [3, 11, '3 of 4 plate screws are still loose at the end.'],
    ]);
    expect(result?.relatedLocations?.[0]?.message?.text).toBe('only 1 of 4 torqued here.');
  });

  test('has no placeholders and no links that an author wrote (3.11.5, 3.11.6)', () => {
    const body = '1. Remove the {0} [cover](https://example.org).\n';
    const { results } = runOf({ 'procedures/p.md': door({ body }) });
    for (const { message } of results) {
      expect(message.text?.replaceAll('{{', '').replaceAll('}}', '')).not.toMatch(/[{}]|\]\(/);
    }
    expect(results.some(({ message }) => message.text?.includes('{{'))).toBe(true);
  });

  test('that is waived is suppressed, with the reason', () => {
    const waive = ':::waive{rule=left-loose}\nTightened in the next job.\n:::\n\n1. ';
    const texts = { 'procedures/p.md': door({ without: ['4.'], change: [['1. ', waive]] }) };
    const { results } = runOf(texts);
    expect(results).toHaveLength(1);
    expect(results[0]?.suppressions).toMatchObject([
      { kind: 'inSource', status: 'accepted', justification: 'Tightened in the next job.' },
    ]);
  });

  test('has fixes whose replacements make the text that the edits make', () => {
    const inspection = check(brokenTexts);
    const { results } = runOf(brokenTexts);
    const path = 'procedures/oil-hinge.md';
    const text = brokenTexts[path];
    inspection.report.findings.forEach(({ fix }, i) => {
      const changes = results[i]?.fixes?.[0]?.artifactChanges ?? [];
      const edits = changes.flatMap(({ replacements }) =>
        replacements.map(({ deletedRegion, insertedContent }) => {
          const { charOffset: start = 0, charLength = 0 } = deletedRegion;
          return { file: path, start, end: start + charLength, text: insertedContent?.text ?? '' };
        }),
      );
      expect(edits.length).toBeGreaterThan(0);
      expect(applyEdits(text, edits)).toBe(applyEdits(text, fix?.edits ?? []));
    });
  });
});

describe('partial fingerprints', () => {
  const printsOf = (texts: Readonly<Record<string, string>>) => runOf(texts).results.map(printIn);

  test('differ within a log, for findings that are alike too', () => {
    const body = '1. Remove the cover.\n2. Remove the cover.\n3. :check{item=ghost}\n';
    const prints = printsOf({ 'procedures/p.md': door({ body }) });
    expect(prints.length).toBeGreaterThan(2);
    expect(new Set(prints).size).toBe(prints.length);
  });

  test('say nothing of lines', () => {
    const text = brokenTexts['procedures/oil-hinge.md'];
    const moved = text.replace('1. :loosen', 'Mind the paint.\n\n1. :loosen');
    expect(printsOf({ 'procedures/oil-hinge.md': moved })).toEqual(printsOf(brokenTexts));
  });
});

test('a baseline marks what is new, unchanged and absent (3.27.24)', () => {
  const { report, linked } = check(brokenTexts);
  const baseline = baselineOf(report.findings.slice(0, 1));
  const gone = baselineOf(
    check({
      'procedures/p.md': door({
        without: ['3.'],
        change: [['procedure: oil-hinge', 'procedure: other']],
      }),
    }).report.findings,
  );
  const both = { ...baseline, known: [...baseline.known, ...gone.known] };
  const marked: Report = againstBaseline(report, both);
  const { results } = runIn(sarifOf({ report: marked, linked }, filesOf(brokenTexts)));
  expect(results.map(({ ruleId, baselineState }) => `${ruleId} ${baselineState}`)).toEqual([
    'left-loose unchanged',
    'left-out new',
    'left-out absent',
  ]);
  const places = results.flatMap(({ locations }) => locations ?? []);
  const physical = places.map((one): PhysicalLocation | undefined => one.physicalLocation);
  expect(physical.map((one) => one !== undefined)).toEqual([true, true, false]);
});

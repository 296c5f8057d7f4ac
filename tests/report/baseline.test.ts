import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Baseline, baselineSchema } from '../../schemas/baseline.ts';
import type { Report } from '../../schemas/report.ts';
import {
  againstBaseline,
  baselineAsText,
  baselineOf,
  fails,
  printOf,
  readBaseline,
  reportAsText,
  selectFindings,
  tightened,
} from '../../src/report/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { checked, manualFrom } from '../manuals/manual-from.ts';
import { check } from '../support/manual.ts';
import { brokenTexts, damagedFrom, door } from './broken-door.ts';

const lathe = await manualFrom('lathe');
const damaged = damagedFrom(lathe);
const reportOf = (files: ManualFiles): Report => checked(files).report;
const brokenDoor = check(brokenTexts).report;

describe('laws', () => {
  test('a report has nothing new against its own baseline but what no baseline may list', () => {
    fc.assert(
      fc.property(damaged, (files) => {
        const report = reportOf(files);
        const marked = againstBaseline(report, baselineOf(report.findings));
        const news = new Set(marked.findings.filter(({ known }) => !known).map(({ rule }) => rule));
        for (const rule of news) expect(rule).toMatch(/^(file-|yaml-broken|front-|too-|waiver-)/);
        expect(marked.baseline?.gone).toEqual([]);
        if (news.size === 0) expect(fails(marked)).toBe(false);
      }),
      { numRuns: 25 },
    );
  });

  test('a baseline does not depend on the order of findings or entries, and comes back as it was written', () => {
    const { findings } = reportOf({ ...lathe, texts: lathe.texts.slice(0, -1) });
    expect(findings.length).toBeGreaterThan(3);
    fc.assert(
      fc.property(fc.shuffledSubarray([...findings]), (some) => {
        const baseline = baselineOf(some);
        const text = baselineAsText(baseline);
        expect(baselineOf(some.toReversed())).toEqual(baseline);
        expect(readBaseline('known.json', text)).toEqual({ value: baseline, problems: [] });
        const turned = { ...baseline, known: baseline.known.toReversed() };
        const report = { ...brokenDoor, findings };
        expect(againstBaseline(report, turned)).toEqual(againstBaseline(report, baseline));
      }),
      { numRuns: 50 },
    );
  });

  test('new, known and gone add up; tightening takes out what is gone and adds nothing', () => {
    fc.assert(
      fc.property(damaged, damaged, (before, after) => {
        const baseline = baselineOf(reportOf(before).findings);
        const report = reportOf(after);
        const { baseline: counts, findings } = againstBaseline(report, baseline);
        const gone = counts?.gone.reduce((sum, { count }) => sum + count, 0) ?? 0;
        expect((counts?.new ?? 0) + (counts?.known ?? 0)).toBe(findings.length);
        expect((counts?.known ?? 0) + gone).toBe(counts?.listed);
        const tight = tightened(baseline, report);
        const again = againstBaseline(report, tight);
        expect(again.findings).toEqual(findings);
        expect(again.baseline).toEqual({ ...counts, listed: counts?.known, gone: [] });
        const prints = new Set(baseline.known.map(({ print }) => print));
        expect(tight.known.every(({ print }) => prints.has(print))).toBe(true);
        expect(tightened(tight, report)).toEqual(tight);
      }),
      { numRuns: 25 },
    );
  });

  test('lines put in between steps change no print', () => {
    const plan = [
      brokenTexts['procedures/oil-hinge.md'],
      door({
        body: '1. Remove the cover.\n\n2. :torque[Snug]{item=plate-screw}\n\n3. :install{item=hinge-pin qty=2} :check{item=ghost}\n',
      }),
    ];
    const filler = fc.constantFrom(
      'Mind the paint.\n\n',
      '\n\n',
      '::::notice\nKeep the floor dry.\n::::\n\n',
      '🔩 *Soft* light helps.\n\n',
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...plan),
        fc.array(filler, { minLength: 1, maxLength: 4 }),
        (text, lines) => {
          const at = text.indexOf('1. ');
          const longer = text.slice(0, at) + lines.join('') + text.slice(at);
          const printsOf = (one: string) => {
            const { findings } = check({ 'procedures/p.md': one }).report;
            return findings
              .filter(({ item, rule }) => item !== undefined || rule === 'untracked-action')
              .map(printOf);
          };
          expect(printsOf(longer)).toEqual(printsOf(text));
          expect(printsOf(text).length).toBeGreaterThan(1);
        },
      ),
    );
  });
});

describe('a print', () => {
  const printsOf = (text: string): string[] =>
    check({ 'procedures/p.md': text }).report.findings.map(printOf);
  const pinOut = door({ without: ['3.'] });

  test('stays when the words, the file or a step about something else change', () => {
    const [before] = printsOf(pinOut);
    const other =
      '4. :torque{item=plate-screw}\n5. :check[Look at the screws]{item=plate-screw}.\n';
    expect(printsOf(pinOut.replace('4. :torque{item=plate-screw}\n', other))).toEqual([before]);
    expect(check({ 'procedures/deep/q.md': pinOut }).report.findings.map(printOf)).toEqual([
      before,
    ]);
    const reworded = pinOut.replace('name: hinge pin', 'name: long pin');
    expect(printsOf(reworded)).toEqual([before]);
  });

  test('stays on another day, and when there is more to choose from', () => {
    const [finding] = brokenDoor.findings;
    if (finding === undefined) throw new Error('there is no finding');
    const told = (data: typeof finding.data): string => printOf({ ...finding, data });
    expect(
      told({ id: 'x', near: 'y', today: '2027-01-01', deep: { known: ['a'], b: 1, c: 2 } }),
    ).toBe(told({ deep: { c: 2, b: 1, known: ['a', 'b'] }, today: '2027-01-02', id: 'x' }));
  });

  test('changes with rule, procedure, item, variants and facts', () => {
    const [finding] = brokenDoor.findings;
    if (finding === undefined) throw new Error('there is no finding');
    const { procedure: _, ...homeless } = finding;
    const all = [
      finding,
      { ...finding, rule: 'left-out' },
      { ...finding, procedure: 'other' },
      homeless,
      { ...homeless, file: 'oil-hinge' },
      { ...finding, item: 'other' },
      { ...finding, when: 'feed = hydraulic' },
      { ...finding, data: { ...finding.data, count: 3 } },
    ].map(printOf);
    expect(new Set(all).size).toBe(all.length);
    for (const print of all) expect(print).toMatch(/^[0-9a-f]{32}$/);
  });
});

describe('the file', () => {
  const text = baselineAsText(baselineOf(brokenDoor.findings));

  test('has a line for each known finding, and fits its schemas', () => {
    expect(text.split('\n')).toHaveLength(2 + 1 + 2 + 2 + 1);
    expect(text).toContain(
      '"rule":"left-out","procedure":"oil-hinge","item":"hinge-pin","says":"The hinge pin is still out at the end"',
    );
    const schema = JSON.parse(
      readFileSync(new URL('../../schemas/json/baseline.schema.json', import.meta.url), 'utf8'),
    );
    const fits = new Ajv({ strict: false }).compile(schema);
    expect(fits(JSON.parse(text)), JSON.stringify(fits.errors)).toBe(true);
    expect(baselineSchema.parse(JSON.parse(text))).toEqual(JSON.parse(text));
    expect(baselineAsText({ baseline: 1, known: [] })).toBe(
      '{\n  "baseline": 1,\n  "known": []\n}\n',
    );
  });

  const broken = (from: string, to: string): readonly string[] => {
    const { value, problems } = readBaseline('known.json', text.replace(from, to));
    expect(value).toBeUndefined();
    return problems;
  };

  test('that is broken is refused at its place', () => {
    expect(broken('"count":1', '"count":0')).toEqual([
      expect.stringMatching(
        /^known\.json:4:\d+: known\.0\.count is 0; expected: a whole number from 1$/,
      ),
    ]);
    expect(broken('"print":"', '"print":"x')).toEqual([
      expect.stringMatching(
        /^known\.json:4:\d+: known\.0\.print is x.*; expected: the print of a finding/,
      ),
    ]);
    expect(broken('"baseline": 1', '"baseline": 2')).toEqual([
      'known.json:2:15: it is written in format 2; this version of tallybolt reads format 1',
    ]);
    const conflict = broken('  "known"', '<<<<<<< ours\n  "known"');
    expect(conflict.length).toBeGreaterThan(0);
    expect(conflict.join('\n')).toMatch(/known\.json:\d+:\d+: /);
    for (const other of ['', '[]', 'null', '{}', '\u0000', '{"baseline": {}}']) {
      const { value, problems } = readBaseline('k', other);
      expect({ other, value }).toEqual({ other, value: undefined });
      expect(problems.join(), other).toMatch(/^k:\d+:\d+: \S/);
    }
  });

  test('with any stretch cut out is refused or read, never thrown at', () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.nat(80), (from, length) => {
        const { value, problems } = readBaseline(
          'k',
          text.slice(0, from) + text.slice(from + length),
        );
        expect(value === undefined).toBe(problems.length > 0);
      }),
      { numRuns: 300 },
    );
  });
});

describe('of findings that are alike', () => {
  const body = (n: number) =>
    Array.from({ length: n }, (_, i) => `${i + 1}. Remove the cover.\n`).join('\n');
  const alike = (n: number) => check({ 'procedures/p.md': door({ body: body(n) }) }).report;
  const of = (n: number): Baseline =>
    baselineOf(alike(n).findings.filter(({ rule }) => rule === 'untracked-action'));

  test('as many are known as are listed', () => {
    expect(of(3).known).toMatchObject([{ rule: 'untracked-action', count: 3 }]);
    const report = selectFindings(againstBaseline(alike(5), of(3)), {
      only: ['untracked-action'],
      level: 'note',
    });
    expect(report.findings.map(({ known }) => known)).toEqual([true, true, true, false, false]);
    expect(report.baseline).toEqual({ new: 2, known: 3, listed: 3, gone: [] });
  });

  test('as many are gone as are missing, and so many are taken out', () => {
    const report = againstBaseline(alike(1), of(3));
    expect(report.baseline).toMatchObject({ known: 1, listed: 3, gone: [{ count: 2 }] });
    expect(tightened(of(3), alike(1)).known).toMatchObject([{ count: 1 }]);
  });

  test('a list that names them twice, as after a merge, counts both', () => {
    const twice = { ...of(1), known: [...of(1).known, ...of(2).known] };
    expect(againstBaseline(alike(3), twice).baseline).toMatchObject({
      known: 3,
      listed: 3,
      gone: [],
    });
    expect(tightened(twice, alike(3)).known).toMatchObject([{ count: 3 }]);
  });
});

describe('a selection', () => {
  const marked = againstBaseline(
    check({ 'procedures/p.md': door({ without: ['3.'] }) }).report,
    baselineOf(brokenDoor.findings),
  );

  test('counts what is gone of the rules that were asked for', () => {
    expect(marked.baseline).toMatchObject({
      new: 0,
      known: 1,
      listed: 2,
      gone: [{ rule: 'left-loose' }],
    });
    const { baseline } = selectFindings(marked, { only: ['left-out'], level: 'note' });
    expect(baseline).toEqual({ new: 0, known: 1, listed: 1, gone: [] });
  });

  test('by level does not take what it hides for gone', () => {
    const findings = marked.findings.map((one) => ({ ...one, level: 'note' as const }));
    const { baseline } = selectFindings({ ...marked, findings }, { only: [], level: 'error' });
    expect(baseline).toMatchObject({ new: 0, known: 0, listed: 2, gone: [{ rule: 'left-loose' }] });
  });
});

test('the text says what is new, counts what is known, and says what is gone', () => {
  const known = baselineOf(brokenDoor.findings);
  const pinOut = check({ 'procedures/p.md': door({ without: ['3.'] }) }).report;
  expect(reportAsText(againstBaseline(pinOut, known), () => '')).toBe(
    `Test manual: 1 procedure, 3 steps, 3 actions checked; nothing new, 1 known.
1 of 2 known findings is gone: write the baseline again with --write-baseline, so that they cannot come back unseen.
`,
  );
  const fresh = reportAsText(againstBaseline(brokenDoor, baselineOf(pinOut.findings)), () => '');
  expect(fresh).toMatch(/^procedures\/oil-hinge\.md:11:4 {2}error {2}left-loose\n/);
  expect(fresh).toMatch(/; 1 new \(1 error\), 1 known\.\n$/);
  expect(fresh).not.toContain('The hinge pin');
});

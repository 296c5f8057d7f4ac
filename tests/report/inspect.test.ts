import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Place } from '../../schemas/finding.ts';
import { type Report, reportSchema } from '../../schemas/report.ts';
import { inspect, reportAsText } from '../../src/report/index.ts';
import { comparePlaces, locator, type ManualFiles } from '../../src/source/index.ts';
import { manualFrom } from '../manuals/manual-from.ts';

const lathe = await manualFrom('lathe');

/** A manual with one stretch of one text taken out, doubled, or replaced by something that may mean something. */
const damaged: fc.Arbitrary<ManualFiles> = fc
  .record({
    file: fc.nat(),
    from: fc.nat(),
    length: fc.oneof(fc.nat(40), fc.nat(2000)),
    does: fc.constantFrom('cut', 'double', 'replace'),
    by: fc.oneof(
      fc.string({ unit: 'binary', maxLength: 20 }),
      fc.constantFrom(
        ':::',
        '::perform{procedure=change-chuck}',
        '---',
        '{',
        '- ',
        '\n',
        '   ',
        '1. ',
        'when: spindle = x',
      ),
    ),
  })
  .map(({ file, from, length, does, by }) => {
    const at = file % lathe.texts.length;
    const texts = lathe.texts.map(({ path, text }, i) => {
      if (i !== at) return { path, text };
      const start = from % (text.length + 1);
      const words = text.slice(start, start + length);
      const middle = does === 'cut' ? '' : does === 'double' ? words + words : by;
      return { path, text: text.slice(0, start) + middle + text.slice(start + length) };
    });
    return { ...lathe, texts };
  });

function placesOf({ findings }: Report): Place[] {
  return findings.flatMap((finding) => [finding, ...finding.related]);
}

test('a damaged manual gives a report that keeps to its schema, never an exception', () => {
  fc.assert(
    fc.property(damaged, (files) => {
      const { report } = inspect(files, '1');
      expect(reportSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report);
      const count = (level: string): number =>
        report.findings.filter((one) => one.level === level).length;
      expect(report.summary).toMatchObject({
        error: count('error'),
        warning: count('warning'),
        note: count('note'),
      });
    }),
    { numRuns: 150 },
  );
});

test('every place is a stretch of the file that it names, and line and column are those of its offset', () => {
  fc.assert(
    fc.property(damaged, (files) => {
      const locators = new Map(files.texts.map(({ path, text }) => [path, locator(path, text)]));
      for (const { file, start, end } of placesOf(inspect(files, '1').report)) {
        const found = locators.get(file);
        expect(found?.point(start.offset), file).toEqual(start);
        expect(found?.point(end.offset), file).toEqual(end);
        expect(end.offset).toBeGreaterThanOrEqual(start.offset);
      }
    }),
    { numRuns: 150 },
  );
});

test('findings are sorted by place, and do not depend on the order of the files', () => {
  fc.assert(
    fc.property(damaged, fc.infiniteStream(fc.nat()), (files, chance) => {
      const { report } = inspect(files, '1');
      expect(report.findings.toSorted(comparePlaces)).toEqual(report.findings);
      const keyed = files.texts.map((text) => ({ text, key: chance.next().value ?? 0 }));
      const texts = keyed.sort((a, b) => a.key - b.key).map(({ text }) => text);
      expect(JSON.stringify(inspect({ ...files, texts }, '1').report)).toBe(JSON.stringify(report));
    }),
    { numRuns: 60 },
  );
});

test('the text form of any report has a head for each finding, and nothing that moves the cursor', () => {
  fc.assert(
    fc.property(damaged, (files) => {
      const { report } = inspect(files, '1');
      const texts = new Map(files.texts.map(({ path, text }) => [path, text]));
      const said = reportAsText(report, (file) => texts.get(file) ?? '');
      expect(said.match(/^\S.*:\d+:\d+ {2}(error|warning|note) {2}\S+$/gm) ?? []).toHaveLength(
        report.findings.length,
      );
      expect(said).not.toMatch(/[^\P{Cc}\n]/u);
    }),
    { numRuns: 100 },
  );
});

test('more than a hundred thousand facts are no fault', () => {
  const steps = Array.from(
    { length: 1000 },
    (_, i) => `${i + 1}. ${':check{item=ghost} '.repeat(25)}\n`,
  ).join('\n');
  const texts = ['a', 'b', 'c', 'd', 'e', 'f', 'g'].map((id) => ({
    path: `procedures/${id}.md`,
    text: `---\nprocedure: ${id}\ntitle: ${id}\n---\n\n${steps}`,
  }));
  const files = {
    texts: [{ path: 'manual.yaml', text: 'title: T\n' }, ...texts],
    unreadable: [],
    others: [],
  };
  expect(inspect(files, '1').report.summary.error).toBe(175_000);
});

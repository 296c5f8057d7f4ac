import { hash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { inspect, KeptInspection } from '../../src/report/index.ts';
import { isProcedureFile, type ManualFiles, type TextFile } from '../../src/source/index.ts';

const demo = await readManualFiles('content');
const today = '2026-01-01';
const kept = (): KeptInspection => new KeptInspection('test', (text) => hash('sha1', text));

/** One change of a manual, as a writer, an editor or a copied folder makes it. */
type Change = (files: ManualFiles) => ManualFiles;

const withTexts =
  (change: (texts: readonly TextFile[]) => readonly TextFile[]): Change =>
  (files) => ({ ...files, texts: [...change(files.texts)] });

const edited = (at: number, change: (text: string) => string): Change =>
  withTexts((texts) =>
    texts.map((file, i) => (i === at % texts.length ? { ...file, text: change(file.text) } : file)),
  );

const index = fc.nat(10_000);
const changes: fc.Arbitrary<Change> = fc.oneof(
  // A word more, a heading more, a line less, a line twice, a line somewhere else, half a file.
  fc.tuple(index, index).map(([at, line]) =>
    edited(
      at,
      onLines(line, (text) => [`${text} more`]),
    ),
  ),
  index.map((at) => edited(at, (text) => `${text}\n## One more heading\n\nText.\n`)),
  fc.tuple(index, index).map(([at, line]) =>
    edited(
      at,
      onLines(line, () => []),
    ),
  ),
  fc.tuple(index, index).map(([at, line]) =>
    edited(
      at,
      onLines(line, (text) => [text, text]),
    ),
  ),
  fc.tuple(index, index, index).map(([at, from, line]) => (files: ManualFiles) => {
    const lines = files.texts.at(from % files.texts.length)?.text.split('\n') ?? [];
    const other = lines[line % lines.length] ?? '';
    return edited(
      at,
      onLines(line, (text) => [text, other]),
    )(files);
  }),
  fc.tuple(index, index).map(([at, to]) => edited(at, (text) => text.slice(0, to))),
  // A file away, a copy of one under another name, all files turned round.
  index.map((at) => withTexts((texts) => texts.filter((_, i) => i !== at % texts.length))),
  index.map((at) =>
    withTexts((texts) => {
      const file = texts.filter(({ path }) => isProcedureFile(path)).at(at % 40);
      return file ? [...texts, { ...file, path: `procedures/copy-${at}.md` }] : texts;
    }),
  ),
  fc.constant(withTexts((texts) => texts.toReversed())),
  index.map((at) => (files: ManualFiles) => ({
    ...files,
    others: files.others.filter((_, i) => i !== at % files.others.length),
  })),
);

const onLines =
  (line: number, change: (text: string) => readonly string[]) =>
  (text: string): string => {
    const lines = text.split('\n');
    return lines.flatMap((one, i) => (i === line % lines.length ? change(one) : [one])).join('\n');
  };

describe('an inspection that is kept', () => {
  it('gives the report of a fresh one after every change', { timeout: 300_000 }, () => {
    fc.assert(
      fc.property(fc.array(changes, { minLength: 1, maxLength: 4 }), (all) => {
        const inspection = kept();
        let files = demo;
        inspection.inspect(files, { today });
        for (const change of all) {
          files = change(files);
          const { report, linked } = inspection.inspect(files, { today });
          const fresh = inspect(files, 'test', { today });
          expect(report).toEqual(fresh.report);
          expect([...linked.procedures.keys()]).toEqual([...fresh.linked.procedures.keys()]);
        }
        // And back again.
        expect(inspection.inspect(demo, { today }).report).toEqual(clean);
      }),
      { numRuns: 12, seed: 6 },
    );
  });

  it('leaves procedures that an edit does not touch as they are', () => {
    const inspection = kept();
    const before = inspection.inspect(demo, { today }).linked.procedures;
    const files = edited(
      demo.texts.findIndex(({ path }) => path.endsWith('replace-anvil.md')),
      (text) => `${text}\nOne more sentence.\n`,
    )(demo);
    const after = inspection.inspect(files, { today }).linked.procedures;
    const changed = [...after].filter(([id, one]) => before.get(id) !== one).map(([id]) => id);
    expect(changed).toContain('replace-anvil');
    expect(changed.length).toBeLessThan(5);
  });
});

const clean = inspect(demo, 'test', { today }).report;

import { beforeAll, describe, expect, test } from 'vitest';
import type { UntrackedReport } from '../../schemas/untracked.ts';
import { type CountedManual, countedManual, untrackedReport } from '../../src/adopt/index.ts';
import { readManualFiles } from '../../src/command/read-manual-files.ts';
import { actionsIn, allActions, allSteps } from '../../src/link/index.ts';
import { type Inspection, inspect } from '../../src/report/index.ts';
import { rules } from '../../src/rules/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { manualFolders } from '../manuals/manual-from.ts';
import { type Stripped, strippedOf } from './stripped.ts';

/** A clean manual whose directives are replaced by their words. */
let plain: ManualFiles;
let checked: Inspection;
let report: UntrackedReport;
let counted: CountedManual;
let stripped: readonly (Stripped & { readonly file: string })[];

beforeAll(async () => {
  const files = await readManualFiles(manualFolders.demo);
  const { linked } = inspect(files, '0.0.0');
  const procedures = [...linked.procedures.values()].map((one) => ({
    file: one.procedure.file,
    ...strippedOf(one, linked),
  }));
  const texts = new Map(procedures.map(({ file, text }) => [file, text]));
  plain = {
    ...files,
    texts: files.texts.map(({ path, text }) => ({ path, text: texts.get(path) ?? text })),
  };
  checked = inspect(plain, '0.0.0');
  report = untrackedReport(checked.linked, (file) => texts.get(file) ?? '');
  counted = countedManual(plain);
  // A torque block stands for the action of its step, so that nothing is lost with the directive.
  const blocks = new Set(
    [...checked.linked.procedures.values()].flatMap(({ procedure }) =>
      [...allSteps(procedure)].flatMap(({ blocks }) =>
        [...actionsIn(blocks)]
          .filter(({ node }) => node === undefined)
          .map(({ item }) => `${procedure.file} ${item.id}`),
      ),
    ),
  );
  stripped = procedures.flatMap(({ file, stripped }) =>
    stripped
      .filter(({ action }) => action.verb !== 'torque' || !blocks.has(`${file} ${action.item.id}`))
      .map((one) => ({ ...one, file })),
  );
}, 120_000);

const proposalsFor = ({ file, start, end }: Stripped & { readonly file: string }) =>
  report.proposals.filter(
    (one) => one.file === file && one.start.offset < end && one.end.offset > start,
  );

describe('the demo manual without its directives', () => {
  test('gets at least 88 in 100 of them back with the verb and the item that it had, and none wrong', () => {
    const written = stripped.map((one) => ({
      one,
      proposals: proposalsFor(one).filter(({ edit }) => edit !== undefined),
    }));
    const isRight = ({ one: { action }, proposals }: (typeof written)[number]): boolean =>
      proposals.some(
        ({ verb, candidates }) => verb === action.verb && candidates[0]?.id === action.item.id,
      );
    const right = written.filter(isRight);
    const wrong = written.filter((one) => one.proposals.length > 0 && !isRight(one));
    expect(stripped.length).toBeGreaterThan(500);
    expect(wrong.map(({ one, proposals }) => `${one.words}: ${proposals[0]?.directive}`)).toEqual(
      [],
    );
    expect(right.length / stripped.length).toBeGreaterThan(0.88);
  });

  test('keeps every word, figure and line: only directives and entries are added', () => {
    for (const { path, text } of counted.files.texts) {
      const before = plain.texts.find((one) => one.path === path)?.text;
      if (!path.endsWith('.md')) continue;
      const bare = text.replaceAll(
        /:[a-z-]+\[([^\]]*)\]\{item=[a-z0-9-]+(?: (?:new|to=[a-z-]+|qty=\d+|each=[a-z-]+))*\}/g,
        '$1',
      );
      const without = before?.replaceAll(
        /:[a-z-]+\[([^\]]*)\]\{item=[a-z0-9-]+(?: (?:new|to=[a-z-]+|qty=\d+|each=[a-z-]+))*\}/g,
        '$1',
      );
      expect(bare, path).toBe(without);
    }
  });

  test('written, has no word left that could be written, and no fault of form or reference that was not there', () => {
    const { files, directives, left } = counted;
    const after = inspect(files, '0.0.0');
    const actions = ({ linked }: Inspection): number =>
      [...linked.procedures.values()].reduce(
        (sum, { procedure }) => sum + [...allActions(procedure)].filter(({ node }) => node).length,
        0,
      );
    expect(directives).toBeGreaterThan(450);
    expect(actions(after)).toBeGreaterThanOrEqual(directives);
    expect(untrackedReport(after.linked, textOf(files)).proposals.map(({ edit }) => edit)).toEqual(
      left.map(() => undefined),
    );
    const faults = (one: Inspection): string[] =>
      one.report.findings
        .filter(({ rule }) => familyOf(rule) === 'form' || /^unknown-|^broken-/.test(rule))
        .map(({ rule, message }) => `${rule}: ${message}`);
    expect(faults(after).filter((one) => !faults(checked).includes(one))).toEqual([]);
    const untold = after.report.findings.filter(({ rule }) => rule === 'untracked-action');
    const before = checked.report.findings.filter(({ rule }) => rule === 'untracked-action');
    expect(untold.length).toBeLessThan(before.length / 20);
  });
});

const textOf = (files: ManualFiles) => (file: string) =>
  files.texts.find(({ path }) => path === file)?.text ?? '';

const familyOf = (id: string): string | undefined => rules.find((rule) => rule.id === id)?.family;

import type { Report } from '../../schemas/report.ts';
import { readManual } from '../catalogue/index.ts';
import { keepLedger } from '../ledger/index.ts';
import { type LinkedManual, linkManual } from '../link/index.ts';
import { expandReverses } from '../reverse/index.ts';
import { type Fact, findAll, makeExamined } from '../rules/index.ts';
import { compareText, type ManualFiles } from '../source/index.ts';
import { parseProcedure } from '../syntax/index.ts';
import { makeReport } from './make-report.ts';

export interface Inspection {
  readonly report: Report;
  readonly linked: LinkedManual;
}

export interface InspectOptions {
  /** The day of the check, YYYY-MM-DD. Without it no waiver expires. */
  readonly today?: string;
}

/** The whole check: texts in, report out. Nothing in the manual can make it throw. */
export function inspect(
  files: ManualFiles,
  version: string,
  { today }: InspectOptions = {},
): Inspection {
  const inOrder = sorted(files);
  const manual = readManual(inOrder);
  const parsed = inOrder.texts.filter(({ path }) => isProcedure(path)).map(parseProcedure);
  const procedures = parsed.flatMap(({ value }) => value ?? []);
  const joined = linkManual(manual.value, procedures, inOrder);
  const linked = expandReverses(joined.value);
  const told: readonly (readonly Fact[])[] = [
    manual.facts,
    ...parsed.map(({ facts }) => facts),
    joined.facts,
    linked.facts,
    keepLedger(linked.value),
  ];
  const facts = told.flat();

  const examined = makeExamined(joined.value, facts, inOrder, linked.value);
  const found = findAll(examined, today);
  return { report: makeReport(linked.value, found, version), linked: linked.value };
}

function sorted(files: ManualFiles): ManualFiles {
  return {
    texts: files.texts.toSorted((a, b) => compareText(a.path, b.path)),
    unreadable: files.unreadable.toSorted((a, b) => compareText(a.path, b.path)),
    others: files.others.toSorted(compareText),
    pictures: (files.pictures ?? []).toSorted((a, b) => compareText(a.path, b.path)),
  };
}

const isProcedure = (path: string): boolean =>
  path.startsWith('procedures/') && path.endsWith('.md');

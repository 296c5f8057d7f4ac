import { reportSchema } from '../../schemas/report.ts';
import {
  type Attribute,
  createSpace,
  describeConditionProblem,
  parseCondition,
  printCondition,
  resolveCondition,
} from '../../src/applicability/index.ts';
import { ditaFiles } from '../../src/dita/index.ts';
import {
  describeProblem,
  findPairs,
  findQuantities,
  parseQuantity,
  parseTorqueSpec,
  printAsWritten,
  toUcum,
} from '../../src/quantity/index.ts';
import {
  makeRedline,
  readRevision,
  redlineAsMarkdown,
  redlineAsPage,
  redlineAsText,
} from '../../src/redline/index.ts';
import { makeBook, searchDocuments, searchIndex } from '../../src/render/index.ts';
import {
  applyEdits,
  type DescribedRule,
  inspect,
  reportAsJunit,
  reportAsMarkdown,
  reportAsSarif,
  reportAsText,
  subjectsOf,
} from '../../src/report/index.ts';
import { Completer } from '../../src/reverse/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import type { FuzzInput } from './fuzz-input.ts';

/** Puts an input through all that reads it. Throws where the program does, or where an answer cannot be right. */
export function tryInput(input: FuzzInput, rules: readonly DescribedRule[]): void {
  switch (input.kind) {
    case 'condition':
      tryCondition(input.text);
      break;
    case 'quantity':
      tryQuantity(input.text);
      break;
    default:
      tryManual(input.texts, input.isShown, rules);
  }
}

const attributes: readonly Attribute[] = [
  { id: 'engine', values: ['petrol', 'diesel'] },
  { id: 'feed', values: ['belt', 'hydraulic'] },
  { id: 'winch', values: ['no', 'yes'] },
];

function tryCondition(text: string): void {
  const { value, problems } = parseCondition(text);
  for (const problem of problems) {
    within(problem, text);
    needsWords(describeConditionProblem(problem));
  }
  if (value === undefined) return;
  const printed = printCondition(value);
  const again = parseCondition(printed).value;
  if (again === undefined || printCondition(again) !== printed)
    throw new Error(`printed as ${JSON.stringify(printed)}, which reads otherwise`);
  const { space } = createSpace(attributes, []);
  const resolved = resolveCondition(space, value);
  for (const problem of resolved.problems) needsWords(describeConditionProblem(problem));
  if (resolved.value !== undefined) space.describe(resolved.value);
}

function tryQuantity(text: string): void {
  const { value, problems } = parseQuantity(text);
  for (const problem of problems) needsWords(describeProblem(problem));
  if (value !== undefined) {
    needsWords(printAsWritten(value));
    toUcum(value);
  }
  parseTorqueSpec(text);
  const found = findQuantities(text);
  for (const one of found) within(one, text);
  findPairs(text, found);
}

function tryManual(
  texts: Readonly<Record<string, string>>,
  isShown: boolean,
  rules: readonly DescribedRule[],
): void {
  const files: ManualFiles = {
    texts: Object.entries(texts).map(([path, text]) => ({ path, text })),
    unreadable: [],
    others: ['figures/a.svg'],
  };
  const { report, linked } = inspect(files, '0.0.0', { today: '2026-01-01' });
  const textOf = (path: string): string => texts[path] ?? '';
  reportSchema.parse(JSON.parse(JSON.stringify(report)));
  for (const finding of report.findings) {
    needsWords(finding.message);
    const at = { start: finding.start.offset, end: finding.end.offset };
    within(at, textOf(finding.file));
    if (finding.fix !== undefined)
      for (const [file, edits] of Map.groupBy(finding.fix.edits, (edit) => edit.file))
        applyEdits(textOf(file), edits);
  }
  const told = reportAsText(report, textOf);
  // What would move a terminal's cursor or turn its lines never gets there.
  if (/[^\P{Cc}\n]|\p{Bidi_Control}/u.test(told))
    throw new Error('the report has control characters');
  if (!isShown) return;
  const subjects = subjectsOf([...linked.outlines.byId.values()], files.texts);
  reportAsJunit(report, subjects);
  reportAsMarkdown(report);
  JSON.parse(
    reportAsSarif(report, {
      rules,
      levels: linked.manual.settings.rules,
      texts: files.texts,
      folder: '',
      exitCode: 0,
    }),
  );
  const completer = new Completer(linked);
  for (const id of linked.procedures.keys()) completer.complete(id);
  const book = makeBook(linked, report, { draft: true });
  searchIndex(searchDocuments(book));
  ditaFiles(linked, book);
  const side = { version: '0.0.0', today: '2026-01-01' };
  const redline = makeRedline(
    readRevision({ ...files, texts: [] }, {}, side),
    readRevision(files, {}, side),
    {
      name: 'tallybolt',
      version: '0.0.0',
    },
  );
  redlineAsText(redline);
  redlineAsMarkdown(redline);
  redlineAsPage(redline, '');
}

function within(
  { start, end }: { readonly start: number; readonly end: number },
  text: string,
): void {
  if (!(start >= 0 && start <= end && end <= text.length))
    throw new Error(`a place from ${start} to ${end} in a text of ${text.length}`);
}

function needsWords(text: string): void {
  if (text.trim() === '') throw new Error('a message without words');
}

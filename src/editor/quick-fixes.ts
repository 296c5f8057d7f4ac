import type { Edit, Finding } from '../../schemas/finding.ts';
import { withLineEndsOf } from '../report/index.ts';
import { Completer } from '../reverse/index.ts';
import { rules, waivable } from '../rules/index.ts';
import type { Desk } from './desk.ts';
import { waiverEdit } from './waiver-edit.ts';

/** Edits that a writer may choose where a finding is. */
export interface QuickFix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** True for what cannot change the meaning of the manual. */
  readonly isSafe: boolean;
  readonly finding: Finding;
}

const canBeWaived: ReadonlySet<string> = new Set(waivable(rules.map(({ id }) => id)));
const balance: ReadonlySet<string> = new Set(
  rules.filter(({ family }) => family === 'balance').map(({ id }) => id),
);

/** For the findings between two offsets of a file: their own fixes, the steps that a job lacks, and waivers. */
export function quickFixes(
  desk: Desk,
  file: string,
  from: number,
  to: number,
): readonly QuickFix[] {
  const { report } = desk.inspection;
  const here = report.findings.filter(
    ({ file: of, start, end }) => of === file && start.offset <= to && from <= end.offset,
  );
  const own = here.flatMap((finding): QuickFix[] => {
    const { fix } = finding;
    if (fix === undefined) return [];
    return [{ title: fix.title, edits: fix.edits, isSafe: fix.kind === 'fix', finding }];
  });
  const waivers = here.flatMap((finding): QuickFix[] => {
    const edit = canBeWaived.has(finding.rule) ? waiverEdit(desk, finding) : undefined;
    if (edit === undefined) return [];
    return [{ title: waiverTitle(finding), edits: [edit], isSafe: false, finding }];
  });
  return [...own, ...completions(desk, here), ...waivers].map((fix) => ({
    ...fix,
    edits: fix.edits.map((edit) => withLineEndsOf(desk.textOf(edit.file) ?? '', edit)),
  }));
}

/** All that a job lacks, where that is more than what its findings here suggest one by one. */
function completions(desk: Desk, here: readonly Finding[]): readonly QuickFix[] {
  const first = new Map<string, Finding>();
  for (const finding of here) {
    const { procedure, rule } = finding;
    if (procedure !== undefined && balance.has(rule) && !first.has(procedure))
      first.set(procedure, finding);
  }
  return [...first].flatMap(([id, finding]) => {
    const completion = new Completer(desk.forAsking.linked).complete(id);
    if (completion === undefined) return [];
    const isSaid = JSON.stringify(completion.edits) === JSON.stringify(finding.fix?.edits);
    const { length } = completion.steps;
    const title = `Write ${length === 1 ? 'the step' : `all ${length} steps`} that this job lacks before everything is home`;
    return isSaid ? [] : [{ title, edits: completion.edits, isSafe: false, finding }];
  });
}

function waiverTitle({ rule, item }: Finding): string {
  return `Waive ${rule}${item === undefined ? '' : ` of ${item}`} here, with a reason to be written`;
}

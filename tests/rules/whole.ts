import type { LinkedManual } from '../../src/link/index.ts';
import { type Examined, type Fact, makeExamined } from '../../src/rules/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';

/** All of a manual as one part, with no `::reverse` written out. */
export function wholeOf(
  linked: LinkedManual,
  files: ManualFiles,
  facts: readonly Fact[] = [],
): Examined {
  const texts = new Map(files.texts.map(({ path, text }) => [path, text]));
  return makeExamined({
    linked,
    expanded: linked,
    subjects: [...linked.procedures].map(([id, one]) => ({ id, one, expanded: one })),
    machines: [...linked.manual.machines.values()],
    hasSettings: true,
    facts,
    text: (file) => texts.get(file) ?? '',
  });
}

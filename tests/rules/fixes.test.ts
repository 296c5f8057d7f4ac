import { describe, expect, it } from 'vitest';
import type { Edit, Finding } from '../../schemas/finding.ts';
import { inspect } from '../../src/report/index.ts';
import type { Example } from '../../src/rules/index.ts';
import type { ManualFiles } from '../../src/source/index.ts';
import { pages } from './rule-pages.ts';
import { filesOf, findingsOf } from './run-example.ts';

const fixable = pages.flatMap(({ bad }) =>
  bad.flatMap((example) =>
    findingsOf(example)
      .filter((finding) => finding.fix !== undefined)
      .map((finding) => ({
        name: `${finding.rule} at ${finding.file}:${finding.start.line}`,
        example,
        finding,
      })),
  ),
);

function applied(files: ManualFiles, edits: readonly Edit[]): ManualFiles {
  return {
    ...files,
    texts: files.texts.map(({ path, text }) => ({
      path,
      text: edits
        .filter((edit) => edit.file === path)
        .toSorted((a, b) => b.start - a.start)
        .reduce(
          (now, { start, end, text: put }) => now.slice(0, start) + put + now.slice(end),
          text,
        ),
    })),
  };
}

const withRule = (findings: readonly Finding[], rule: string): number =>
  findings.filter((one) => one.rule === rule).length;

describe('fixes and suggestions', () => {
  it('are there to be tested', () => expect(fixable.length).toBeGreaterThan(10));

  it.for(fixable)(
    '$name does away with what it was made for',
    ({ example, finding }: { example: Example; finding: Finding }) => {
      const files = filesOf(example.files);
      const after = inspect(applied(files, finding.fix?.edits ?? []), 'test').report.findings;
      expect(withRule(after, finding.rule)).toBe(withRule(findingsOf(example), finding.rule) - 1);
    },
  );

  it('of kind "fix" are only spellings of units and numbers', () => {
    const safe = fixable.filter(({ finding }) => finding.fix?.kind === 'fix');
    expect(new Set(safe.map(({ finding }) => finding.rule))).toEqual(new Set(['unit-spelling']));
  });
});

import type { Root } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { describe, expect, test } from 'vitest';
import { againstBaseline, baselineOf, reportAsMarkdown } from '../../src/report/index.ts';
import { check } from '../support/manual.ts';
import { brokenTexts, door } from './broken-door.ts';

/** As a host of code reads it: GitHub Flavored Markdown (github.github.com/gfm), by remark. */
const read = (markdown: string): Root => unified().use(remarkParse).use(remarkGfm).parse(markdown);

function kinds(markdown: string): Set<string> {
  const found = new Set<string>();
  visit(read(markdown), (node) => {
    found.add(node.type);
  });
  return found;
}

function rowsIn(markdown: string): string[] {
  const rows: string[] = [];
  visit(read(markdown), 'tableRow', (row) => {
    rows.push(row.children.map((cell) => textOf(cell)).join('|'));
  });
  return rows;
}

test('has the counts, a table by procedure, and the findings', () => {
  const markdown = reportAsMarkdown(check(brokenTexts).report);
  expect(markdown).toBe(`## Door manual

1 procedure, 2 steps, 2 actions checked; 2 errors.

| procedure or file | errors | warnings | notes | waived |
| :---------------- | -----: | -------: | ----: | -----: |
| oil-hinge         |      2 |          |       |        |

### Findings

- **error** \`left-loose\` \`procedures/oil-hinge.md:11\` All 4 plate screws are still loose at the end. Add \`:torque{item=plate-screw}\`, or say \`plate-screw: loose\` under \`leaves\` in the front matter if the job is to end so.
- **error** \`left-out\` \`procedures/oil-hinge.md:12\` The hinge pin is still out at the end. Add \`:install{item=hinge-pin}\` where the hinge pin goes back, or say \`hinge-pin: out\` under \`leaves\` in the front matter if the job is to end so.
`);
});

test('of a clean manual is two lines', () => {
  const { report } = check({ 'procedures/p.md': door() });
  expect(reportAsMarkdown(report)).toBe(
    '## Test manual\n\n1 procedure, 4 steps, 4 actions checked; everything balances.\n',
  );
});

test('with a baseline tells new from known and gone', () => {
  const { report } = check(brokenTexts);
  const other = check({
    'procedures/p.md': door({ without: ['3.'], change: [['oil-hinge', 'other']] }),
  }).report;
  const known = [
    ...baselineOf(report.findings.slice(0, 1)).known,
    ...baselineOf(other.findings).known,
  ];
  const markdown = reportAsMarkdown(againstBaseline(report, { baseline: 1, known }));
  expect(markdown).toContain('1 new (1 error), 1 known.');
  expect(rowsIn(markdown)).toEqual([
    'procedure or file|errors|warnings|notes|known|gone|waived',
    'oil-hinge|1|||1||',
    'other|||||1|',
  ]);
  expect(markdown).toContain('### New\n\n- **error** `left-out`');
  expect(markdown).toContain(
    '<details><summary>Known, as the baseline lists (1)</summary>\n\n- **error** `left-loose`',
  );
  expect(markdown).toContain(
    '<summary>Gone since the baseline was written (1)</summary>\n\n- `left-out` `other` The hinge pin',
  );
});

describe('words of an author', () => {
  const plain = kinds(reportAsMarkdown(check(brokenTexts).report));
  const nasty = [
    '<b onclick=x>Remove</b> the cover',
    '<!-- Remove the cover',
    '[Remove the cover](javascript:x)',
    '![Remove the cover](x.png)',
    'Remove **the** _cover_ ~~now~~',
    'Remove the cover | lid',
    'Remove https://example.org and www.example.org and a@example.org',
    'Remove &lt; &amp; the cover',
    'Remove the `cover',
    'Remove the cover \\',
    'Remove the cover[^1]',
  ];

  test.each(nasty)('take no effect: %s', (words) => {
    const { report } = check(brokenTexts);
    const [finding] = report.findings;
    if (finding === undefined) throw new Error('there is no finding');
    const told = { ...finding, message: words, when: words, procedure: words };
    const { help: _, ...bare } = told;
    const markdown = reportAsMarkdown({
      ...report,
      findings: [bare],
      manual: { ...report.manual, title: words },
    });
    const found = kinds(markdown);
    expect([...found].filter((kind) => !plain.has(kind))).toEqual([]);
    expect(textOf(read(markdown)).replaceAll('\u2060', '')).toContain(
      words.replaceAll('`', '').slice(0, 30).trim(),
    );
  });

  test('call nobody and link to no issue', () => {
    const body = '1. Remove the cover @root #12.\n';
    const markdown = reportAsMarkdown(check({ 'procedures/p.md': door({ body }) }).report);
    const outside = markdown.replaceAll(/`[^`]*`/g, '');
    expect(outside).not.toMatch(/@root|#12/);
    expect(outside).toContain('@\u2060root #\u206012');
  });
});

test('lists fifty of a kind and counts the rest', () => {
  const body = Array.from({ length: 60 }, (_, i) => `${i + 1}. :check{item=ghost-${i}x}\n`).join(
    '',
  );
  const { report } = check({ 'procedures/p.md': door({ body }) });
  const markdown = reportAsMarkdown(report);
  const unlisted = report.findings.length - 50;
  expect(unlisted).toBeGreaterThan(0);
  expect(markdown.match(/^- /gm)).toHaveLength(50);
  expect(markdown).toContain(`And ${unlisted} more, which \`tallybolt inspect\` tells.`);
});

import { describe, expect, it } from 'vitest';
import type { Report } from '../../schemas/report.ts';
import { reportSchema } from '../../schemas/report.ts';
import { inspect, reportAsText } from '../../src/report/index.ts';

const front = `---
procedure: a
title: A
items:
  parts:
    belt: { name: belt }
    guard: { name: guard }
---

`;

function reportOn(body: string, today?: string, manual = 'title: T\n'): Report {
  const texts = [
    { path: 'manual.yaml', text: manual },
    { path: 'procedures/a.md', text: front + body },
  ];
  const files = { texts, unreadable: [], others: [] };
  return inspect(files, 'test', today === undefined ? {} : { today }).report;
}

const told = ({ findings }: Report): string[] =>
  findings.map(({ rule, item }) => `${rule} ${item ?? ''}`.trim());
const passed = ({ waivers }: Report): string[][] =>
  waivers.map(({ waived }) => waived.map(({ rule, item }) => `${rule} ${item}`));

const steps = '1. :remove{item=guard}\n2. :remove{item=belt}\n';
const waive = (attributes: string, indent = ''): string =>
  `${indent}:::waive{${attributes}}\n${indent}Agreed.\n${indent}:::\n`;

describe('waivers', () => {
  it('let pass what lies in their scope, of their rule and item, and count it', () => {
    const report = reportOn(`${waive('rule=left-out item=belt')}\n${steps}`);
    expect(told(report)).toEqual(['left-out guard']);
    expect(passed(report)).toEqual([['left-out belt']]);
    expect(report.summary).toEqual({ error: 1, warning: 0, note: 0, waived: 1 });
    expect(report.waivers[0]).toMatchObject({
      rule: 'left-out',
      item: 'belt',
      reason: 'Agreed.',
      file: 'procedures/a.md',
      start: { line: 10, column: 1 },
      procedure: 'a',
    });
    expect(reportSchema.parse(JSON.parse(JSON.stringify(report)))).toEqual(report);
  });

  it('hold for all items where none is named', () => {
    const report = reportOn(`${waive('rule=left-out')}\n${steps}`);
    expect(told(report)).toEqual([]);
    expect(passed(report)).toEqual([['left-out guard', 'left-out belt']]);
  });

  it('in a step hold for that step and those inside it', () => {
    const inner = '1. Open up.\n\n   1. :remove{item=guard}\n   2. :remove{item=belt}\n\n';
    expect(told(reportOn(inner + waive('rule=left-out', '   ')))).toEqual([]);
    const one = `1. :remove{item=guard}\n\n${waive('rule=left-out', '   ')}\n2. :remove{item=belt}\n`;
    expect(told(reportOn(one))).toEqual(['left-out belt']);
  });

  it('in a section hold up to the next heading', () => {
    const body = `## One\n\n1. :remove{item=guard}\n\n${waive('rule=left-out')}\n## Two\n\n1. :remove{item=belt}\n`;
    expect(told(reportOn(body))).toEqual(['left-out belt']);
  });

  it('of two that fit, the narrower counts and the wider is unused', () => {
    const body = `${waive('rule=left-out')}\n1. :remove{item=belt}\n\n${waive('rule=left-out', '   ')}\n2. :check{item=guard}\n`;
    const report = reportOn(body);
    expect(told(report)).toEqual(['waiver-unused']);
    expect(passed(report)).toEqual([[], ['left-out belt']]);
  });

  it('hold on their last day, and not on the next', () => {
    const body = `${waive('rule=left-out until=2027-03-31')}\n${steps}`;
    for (const today of [undefined, '2026-12-31', '2027-03-31'])
      expect(told(reportOn(body, today))).toEqual([]);
    const after = reportOn(body, '2027-04-01');
    expect(told(after).toSorted()).toEqual(['left-out belt', 'left-out guard', 'waiver-expired']);
    expect(after.findings.find(({ rule }) => rule === 'waiver-expired')?.data).toEqual({
      rule: 'left-out',
      until: '2027-03-31',
      today: '2027-04-01',
      comeBack: 2,
    });
    expect(after.summary.waived).toBe(0);
  });

  it('do not hide a wider one once they have expired', () => {
    const body = `${waive('rule=left-out')}\n1. :remove{item=belt}\n\n${waive('rule=left-out until=2027-01-01', '   ')}\n2. :check{item=guard}\n`;
    expect(told(reportOn(body, '2027-04-01'))).toEqual(['waiver-expired']);
  });

  it.each([
    'yaml-broken',
    'file-unreadable',
    'front-matter-missing',
    'too-large',
    'waiver-expired',
  ])('cannot be of %s', (rule) => {
    const report = reportOn(`${waive(`rule=${rule}`)}\n1. :check{item=belt} :check{item=guard}\n`);
    expect(told(report)).toEqual(['waiver-unknown-rule']);
  });

  it('of a rule that is off say so', () => {
    const manual = 'title: T\nrules: { left-out: off }\n';
    const [found] = reportOn(`${waive('rule=left-out')}\n${steps}`, undefined, manual).findings;
    expect(found?.message).toBe(
      'The rule `left-out` is turned off in manual.yaml, so this waiver lets nothing pass',
    );
  });

  it('without a reason hold nothing, in either form', () => {
    for (const written of ['::waive{rule=left-out}\n', ':::waive{rule=left-out}\n:::\n'])
      expect(told(reportOn(`${written}\n1. :remove{item=belt}\n2. :check{item=guard}\n`))).toEqual([
        'waiver-reason',
        'left-out belt',
      ]);
  });

  it('are listed in the text after the summary', () => {
    const body = `${waive('rule=left-out item=belt until=2027-03-31')}\n${steps}\n::waive{rule=blocked}\n`;
    const text = reportAsText(reportOn(body), () => front + body);
    expect(text.slice(text.indexOf('T: '))).toBe(
      `T: 1 procedure, 2 steps, 2 actions checked; 2 errors, 1 waived.

Waived:
  procedures/a.md:10:1  1 finding by left-out of belt until 2027-03-31: Agreed.
  procedures/a.md:17:1  0 findings by blocked: no reason is given
`,
    );
  });

  it('take nothing away and add nothing: what is told and what passes is what was found', () => {
    const without = reportOn(steps);
    const report = reportOn(`${waive('rule=left-out item=belt')}\n${steps}`);
    expect([...report.findings, ...report.waivers.flatMap(({ waived }) => waived)].length).toBe(
      without.findings.length,
    );
  });
});

import type { Finding } from '../../../schemas/finding.ts';
import type { Report } from '../../../schemas/report.ts';
import { printable } from '../printable.ts';
import { type Subject, subjectOf } from '../subjects.ts';
import { type XmlElement, xml, xmlDocument } from '../xml.ts';
import { type Case, casesOf, type FoundIn } from './cases-of.ts';

/**
 * The report as JUnit XML: a suite for each procedure and for each other text, a case for each rule. The elements
 * and attributes are those that the Jenkins xUnit plug-in's junit-10.xsd allows; no clock is read, so no time is said.
 */
export function reportAsJunit(report: Report, subjects: readonly Subject[]): string {
  const found = foundBySubject(report);
  const named = new Set(subjects.map(({ name }) => name));
  // A file beyond reading is no text of the manual, and has findings nevertheless.
  const others = [...found.keys()]
    .filter((name) => !named.has(name))
    .map((name): Subject => ({ name, kind: 'file', file: name }));
  const suites = [...subjects, ...others].map((subject) => ({
    subject,
    cases: casesOf(
      found.get(subject.name) ?? { findings: [], waived: [] },
      subject.kind === 'procedure' ? 'balances' : 'is in order',
    ),
  }));
  const all = suites.flatMap(({ cases }) => cases);
  const { skipped: _, ...counts } = countsOf(all);
  const root = xml(
    'testsuites',
    { name: printable(report.manual.title), ...counts },
    suites.map(({ subject, cases }) => suite(subject, cases)),
  );
  return xmlDocument(root, { isSpaced: (name) => name.startsWith('test') });
}

function foundBySubject({ findings, waivers }: Report): ReadonlyMap<string, FoundIn> {
  const waived = waivers.flatMap(({ reason, waived }) =>
    waived.map((finding) => ({ finding, reason })),
  );
  const told = Map.groupBy(findings, subjectOf);
  const passed = Map.groupBy(waived, ({ finding }) => subjectOf(finding));
  const names = new Set([...told.keys(), ...passed.keys()]);
  return new Map(
    [...names].map((name) => [
      name,
      { findings: told.get(name) ?? [], waived: passed.get(name) ?? [] },
    ]),
  );
}

function countsOf(cases: readonly Case[]) {
  const count = (ends: Case['ends']) => String(cases.filter((one) => one.ends === ends).length);
  return {
    tests: String(cases.length),
    failures: count('failed'),
    errors: '0',
    skipped: count('skipped'),
  };
}

function suite({ name, file }: Subject, cases: readonly Case[]): XmlElement {
  const attributes = { name: printable(name), ...countsOf(cases), file: printable(file) };
  return xml(
    'testsuite',
    attributes,
    cases.map((one) =>
      xml('testcase', { name: one.name, classname: printable(name) }, outcome(one)),
    ),
  );
}

function outcome(one: Case): XmlElement[] {
  switch (one.ends) {
    case 'failed': {
      const [first, ...others] = one.findings;
      const more = others.length === 0 ? '' : `, and ${others.length} more`;
      const message = printable(`${sentenceOf(first)}${more}`);
      return [xml('failure', { type: one.rule, message }, [listOf(one.findings)])];
    }
    case 'skipped':
      return [xml('skipped', { message: printable(one.why) }, [listOf(one.findings)])];
    case 'passed':
      return one.notes.length === 0 ? [] : [xml('system-out', {}, [listOf(one.notes)])];
  }
}

const listOf = (findings: readonly Finding[]): string => findings.map(linesOf).join('\n\n');

function linesOf(finding: Finding): string {
  const { file, start, level, rule, related, help } = finding;
  return [
    `${file}:${start.line}:${start.column} ${level} ${rule}`,
    sentenceOf(finding),
    ...related.map((one) => `${one.file}:${one.start.line}:${one.start.column} ${one.label}`),
    ...(help === undefined ? [] : [`do: ${help}`]),
  ]
    .map(printable)
    .join('\n');
}

const sentenceOf = ({ message, when }: Finding): string =>
  when === undefined ? message : `${message} (when ${when})`;

import { expect, test } from 'vitest';
import { checked } from '../manuals/manual-from.ts';
import { generate } from './generate.ts';
import { plainPage } from './plain-page.ts';
import { differences, slips } from './planted.ts';
import { sizeOf } from './sizes.ts';

const size = sizeOf(40);
const { files, planted } = generate(1, size);
const procedures = files.texts.filter(({ path }) => path.endsWith('.md'));
const jobs = procedures.filter(({ path }) => path.includes('-job-'));
const { report, linked } = checked(files);

test('there are as many procedures and machines as asked for', () => {
  expect(procedures).toHaveLength(40);
  expect(report.manual.procedures).toBe(40);
  for (const [asked, machines] of [
    [100, 5],
    [1000, 20],
    [10_000, 20],
  ] as const) {
    const { machines: found, jobs: each } = sizeOf(asked);
    expect({ procedures: found * (each + 4), machines: found }).toEqual({
      procedures: asked,
      machines,
    });
  }
});

test('a job has about 5 KB and, with what is written out, about 30 steps', () => {
  const mean = jobs.reduce((sum, { text }) => sum + Buffer.byteLength(text), 0) / jobs.length;
  expect(mean).toBeGreaterThan(4700);
  expect(mean).toBeLessThan(5500);
  const steps = report.manual.steps / 40;
  expect(steps).toBeGreaterThan(26);
  expect(steps).toBeLessThan(34);
});

test('what real manuals have is in it: variants, shared jobs, steps written out, links, tables', () => {
  const all = jobs.map(({ text }) => text).join('');
  const machine = files.texts.find(({ path }) => path.startsWith('machines/'))?.text ?? '';
  expect(Object.keys(linked.manual.settings.variants)).toHaveLength(4);
  expect(machine.match(/when: /g)?.length).toBeGreaterThan(30);
  for (const found of [
    /::step\{when=/g,
    /::perform\{/g,
    /^::reverse\{/gm,
    /\]\(.*\.md\)/g,
    /^\| ---/gm,
  ])
    expect(all.match(found)?.length ?? 0).toBeGreaterThan(6);
  expect(all).not.toContain('figure');
});

test('every planted slip is found, of every kind, and nothing else', () => {
  expect(planted).toHaveLength(size.slips);
  expect(differences(planted, report.findings)).toEqual({ missed: [], more: [] });
  const { planted: many } = generate(2, { machines: 2, jobs: 30, slips: 60 });
  // Of one rule there are two slips.
  expect(new Set(many.map(({ rule }) => rule)).size).toBe(slips.length - 1);
});

test('a finding that is missing, another one and one that is told twice are told', () => {
  const [first, ...rest] = report.findings;
  const more = { ...report.findings[1], rule: 'left-loose' };
  if (first === undefined) throw new Error('nothing was found');
  const name = `${first.rule} ${first.file}:${first.start.line}`;
  expect(differences(planted, rest)).toEqual({ missed: [name], more: [] });
  expect(differences(planted, [first, ...report.findings]).more).toEqual([name]);
  expect(differences(planted, [...report.findings, { ...first, ...more }]).more).toHaveLength(1);
});

test('the same seed gives the same bytes, another seed others', () => {
  const of = (seed: number): string => JSON.stringify(generate(seed, size));
  expect(of(1)).toBe(JSON.stringify({ files, planted }));
  expect(of(1)).not.toBe(of(2));
});

test('a plain page has the words of a job and no directive', () => {
  for (const file of procedures) {
    const page = plainPage(file);
    expect(page).not.toMatch(/:\w+[[{]|^\s*:::?|\]\{/m);
    expect(page.startsWith('---\ntitle: ')).toBe(true);
  }
  const job = jobs.find(({ text }) => text.includes(':::torque'));
  if (job === undefined) throw new Error('no job has a torque box');
  expect(plainPage(job)).toContain('Peel the gasket off and throw it away.');
});

import { describe, expect, test } from 'vitest';
import type { Finding } from '../schemas/finding.ts';
import { generate } from './bench/generate.ts';
import { differences } from './bench/planted.ts';
import { brokenCopies, type Expected } from './manuals/broken-copies.ts';
import {
  checked,
  edited,
  lineOf,
  type ManualName,
  manualFolders,
  manualFrom,
} from './manuals/manual-from.ts';
import { torqueAndLimit } from './manuals/plausible-torque.ts';

const names = Object.keys(manualFolders).filter(
  (name): name is ManualName => name in manualFolders,
);

describe.each(names)('the manual of the %s', (name) => {
  test('is clean', async () => {
    const { report } = checked(await manualFrom(name));
    expect(report.findings).toEqual([]);
    expect(report.manual.procedures).toBeGreaterThan(4);
    expect(report.manual.actions).toBeGreaterThan(40);
  });

  test('gives bolts a torque that they stand and that holds', async () => {
    const { machines } = checked(await manualFrom(name)).linked.manual;
    const items = [...machines.values()].flatMap((machine) => [...machine.items.values()]);
    const shares = items.flatMap((item) => {
      const both = item.kind === 'fastener' ? torqueAndLimit(item) : undefined;
      return both === undefined ? [] : [{ id: item.id, share: both.given / both.full }];
    });
    expect(shares.length).toBeGreaterThan(3);
    expect(shares.filter(({ share }) => !(share > 0.5 && share < 1.01))).toEqual([]);
  });
});

describe('a manual with one slip', () => {
  test.each(brokenCopies)('$manual: $slip', async ({ manual, file, from, to, found }) => {
    const files = edited(await manualFrom(manual), file, from, to);
    const wanted = found.map((one: Expected) => {
      const where = one.file ?? file;
      return told({ ...one, file: where, line: lineOf(files, where, one.at) });
    });
    const { findings } = checked(files).report;
    const got = findings.map((one: Finding) => told({ ...one, line: one.start.line }));
    expect([...new Set(got)].sort()).toEqual(wanted.sort());
  });

  test('is one of many kinds', () => {
    expect(
      new Set(brokenCopies.flatMap(({ found }) => found.map(({ rule }) => rule))).size,
    ).toBeGreaterThan(20);
  });
});

describe('a generated manual', () => {
  const size = { machines: 2, jobs: 24 };

  test('is clean, whatever the seed', () => {
    for (const seed of [1, 2, 3]) {
      expect(checked(generate(seed, { ...size, slips: 0 }).files).report.findings).toEqual([]);
    }
  });

  test('has all slips that were planted found, and nothing else', () => {
    const { files, planted } = generate(4, { ...size, slips: 24 });
    expect(planted).toHaveLength(24);
    expect(differences(planted, checked(files).report.findings)).toEqual({ missed: [], more: [] });
  });

  test('is the same for the same seed, and another for another', () => {
    const of = (seed: number) => JSON.stringify(generate(seed, { ...size, slips: 24 }));
    expect(of(5)).toBe(of(5));
    expect(of(5)).not.toBe(of(6));
  });
});

interface Told {
  readonly rule: string;
  readonly file: string;
  readonly line: number;
  readonly when?: string;
}

const told = ({ rule, file, line, when }: Told): string =>
  `${rule} ${file}:${line}${when === undefined ? '' : ` when ${when}`}`;

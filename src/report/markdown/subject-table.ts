import type { Table, TableRow } from 'mdast';
import type { Report } from '../../../schemas/report.ts';
import { compareText } from '../../source/index.ts';
import { subjectOf } from '../subjects.ts';
import { plain } from './words-in.ts';

interface Counts {
  error: number;
  warning: number;
  note: number;
  known: number;
  gone: number;
  waived: number;
}

/** Counts by procedure or file, of those that have any. Known findings have a column of their own. */
export function subjectTable(report: Report): Table | undefined {
  const counts = countsBySubject(report);
  if (counts.size === 0) return undefined;
  const columns: readonly (readonly [string, keyof Counts])[] = [
    ['errors', 'error'],
    ['warnings', 'warning'],
    ['notes', 'note'],
    ...(report.baseline === undefined
      ? []
      : ([
          ['known', 'known'],
          ['gone', 'gone'],
        ] as const)),
    ['waived', 'waived'],
  ];
  const rows = [...counts].sort(([a], [b]) => compareText(a, b));
  return {
    type: 'table',
    align: ['left', ...columns.map(() => 'right' as const)],
    children: [
      row(['procedure or file', ...columns.map(([title]) => title)]),
      ...rows.map(([name, of]) =>
        row([name, ...columns.map(([, key]) => (of[key] === 0 ? '' : String(of[key])))]),
      ),
    ],
  };
}

function countsBySubject({ findings, waivers, baseline }: Report): ReadonlyMap<string, Counts> {
  const counts = new Map<string, Counts>();
  const add = (name: string, key: keyof Counts, by: number): void => {
    const found = counts.get(name) ?? {
      error: 0,
      warning: 0,
      note: 0,
      known: 0,
      gone: 0,
      waived: 0,
    };
    counts.set(name, { ...found, [key]: found[key] + by });
  };
  for (const one of findings) add(subjectOf(one), one.known === true ? 'known' : one.level, 1);
  for (const one of baseline?.gone ?? []) add(subjectOf(one), 'gone', one.count);
  for (const { waived } of waivers) for (const one of waived) add(subjectOf(one), 'waived', 1);
  return counts;
}

const row = (cells: readonly string[]): TableRow => ({
  type: 'tableRow',
  children: cells.map((text) => ({
    type: 'tableCell',
    children: text === '' ? [] : [plain(text)],
  })),
});

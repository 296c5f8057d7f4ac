import type { PullListData } from '../../schemas/pull-list.ts';
import { csv } from './csv.ts';

type Line = PullListData['lines'][number];

const columns: readonly (readonly [heading: string, cell: (line: Line) => string | undefined])[] = [
  ['kind', ({ kind }) => kind],
  ['item', ({ item }) => item],
  ['name', ({ name }) => name],
  ['goes with', ({ goesWith }) => goesWith],
  ['part number', ({ partNumber }) => partNumber],
  ['specification', ({ specification }) => specification],
  ['count', ({ count }) => count?.toString()],
  ['quantity', ({ quantity }) => quantity?.value.toString()],
  ['unit', ({ quantity }) => quantity?.unit],
  ['up to', ({ upTo }) => (upTo ? 'yes' : undefined)],
  [
    'containers',
    ({ containers = [] }) =>
      containers.map(({ count, size }) => `${count} x ${size.value} ${size.unit}`).join(' + '),
  ],
  ['only', ({ when }) => when?.words],
  ['condition', ({ when }) => when?.condition],
  ['procedures', ({ procedures }) => procedures.join(' ')],
  ['note', ({ note }) => note],
];

/** A pull list as a table for spreadsheets: a row of headings, then one a line. Units are UCUM codes. */
export function pullCsv({ lines }: PullListData): string {
  return csv([
    columns.map(([heading]) => heading),
    ...lines.map((line) => columns.map(([, cell]) => cell(line) ?? '')),
  ]);
}

/** A pull list as JSON, as `pullListSchema` says. */
export function pullJson(data: PullListData): string {
  return `${JSON.stringify(data, undefined, 2)}\n`;
}

import stringWidth from 'string-width';
import {
  documentNumber,
  itemName,
  type PullLine,
  type PullList,
  pullGroups,
} from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { noPaint, type Paint, printable } from '../report/index.ts';
import {
  pullAmount,
  pullContainers,
  pullName,
  pullNote,
  pullPartNumber,
  pullSpecification,
} from './pull-words.ts';

/** A pull list for a terminal: amounts to the right, names and part numbers in columns, cases below. */
export function pullText(list: PullList, manual: LinkedManual, paint: Paint = noPaint): string {
  const titles = list.procedures.map(
    (one) => `${one.procedure.front.title} (${documentNumber(manual, one)})`,
  );
  const head = [...titles, ...(list.for === undefined ? [] : [`Only for ${list.for}`])];
  const parts = pullGroups.flatMap(({ name: heading, kinds }) => {
    const rows = list.lines
      .filter(({ kind }) => kinds.includes(kind))
      .map((line) => cellsOf(line, list, manual));
    if (rows.length === 0) return [];
    const widest = (column: 'amount' | 'name' | 'partNumber'): number =>
      Math.max(...rows.map((row) => stringWidth(row[column])));
    const [amounts, names, numbers] = [widest('amount'), widest('name'), widest('partNumber')];
    const lines = rows.flatMap(({ amount, name, partNumber, rest, below }) => {
      const columns = [
        ' '.repeat(amounts - stringWidth(amount)) + amount,
        padded(name, names),
        ...(numbers === 0 ? [] : [padded(partNumber, numbers)]),
        rest,
      ];
      const indent = ' '.repeat(amounts + 6);
      return [
        `  ${columns.join('  ')}`.trimEnd(),
        ...below.map((one) => paint.faint(indent + one)),
      ];
    });
    return ['', paint.strong(heading), ...lines];
  });
  const nothing = parts.length === 0 ? ['', 'Nothing has to be handed out.'] : [];
  return `${[...head.map((one) => paint.strong(printable(one))), ...parts, ...nothing].join('\n')}\n`;
}

function cellsOf(line: PullLine, list: PullList, { manual }: LinkedManual) {
  const { item, kind, named, count, isMost, when, procedures } = line;
  const { policy } = manual;
  const most = isMost ? 'up to ' : '';
  const note = kind === 'tool' || kind === 'aid' ? pullNote(line) : undefined;
  const goesWith =
    named !== undefined && kind === 'fastener' ? `with ${itemName(item, count)}` : '';
  const isShared = list.procedures.length > 1;
  return {
    amount: plain(count === undefined ? (pullAmount(line, policy) ?? '') : `${most}${count}`),
    name: plain(pullName(line)),
    partNumber: plain(pullPartNumber(line) ?? ''),
    rest: plain(
      [pullContainers(line), pullSpecification(line, policy), goesWith, note]
        .filter(Boolean)
        .join(', '),
    ),
    below: [
      ...(when === undefined ? [] : [`only ${when.words}`]),
      ...(isShared ? [procedures.map(({ procedure }) => procedure.id).join(', ')] : []),
    ].map(plain),
  };
}

/** Columns on a terminal need no blanks that hold together. */
const plain = (text: string): string => printable(text).replaceAll('\u00a0', ' ');

const padded = (text: string, width: number): string =>
  text + ' '.repeat(width - stringWidth(text));

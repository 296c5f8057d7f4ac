import type { Item, ManualModel } from '../catalogue/index.ts';
import { kindOfUnit, type UnitId, type UnitKind, unitIds } from '../quantity/index.ts';
import type { Proposal } from './proposal.ts';

/** Kinds of quantity that an attribute takes. */
const kindsOf: Readonly<Record<string, readonly UnitKind[]>> = {
  amount: ['volume'],
  time: ['time'],
  wait: ['time'],
  angle: ['angle'],
  value: ['torque', 'length', 'pressure', 'temperature', 'volume', 'mass', 'force'],
};

/** Units behind a number, the manual's own first. */
export function completeUnit(
  manual: ManualModel,
  text: string,
  start: number,
  offset: number,
  key: string,
  item: Item | undefined,
): readonly Proposal[] {
  const before = text.slice(0, offset - start);
  const typed = /\d[\d.,/]*(\s*)([^\d\s]*)$/.exec(before);
  if (typed === null) return key === 'value' && item !== undefined ? known(item, start, text) : [];
  const [, blank = '', word = ''] = typed;
  const rest = /^[^\s"'}]*/.exec(text.slice(offset - start))?.[0] ?? '';
  const kinds = kindsOf[key] ?? [];
  return unitIds
    .filter((unit) => kinds.includes(kindOfUnit(unit)))
    .map((unit) => ({
      label: unit,
      kind: 'unit',
      detail: kindOfUnit(unit),
      text: blank === '' && word === '' ? ` ${unit}` : unit,
      from: offset - word.length,
      to: offset + rest.length,
      rank: rankOf(unit, manual, kinds),
    }));
}

function rankOf(unit: UnitId, { policy }: ManualModel, kinds: readonly UnitKind[]): number {
  const kind = kindOfUnit(unit);
  const [first, second] = policy[kind];
  return kinds.indexOf(kind) * 10 + (unit === first ? 0 : unit === second ? 1 : 9);
}

/** The values that the catalogue has, to be said as it has them. */
function known(item: Item, start: number, text: string): readonly Proposal[] {
  const torque =
    (item.kind === 'fastener' || item.kind === 'connection') && item.torque !== undefined
      ? item.torque.written.slice(-1)
      : [];
  return [...torque, ...item.limits.map(({ written }) => written)].map((written) => ({
    label: written,
    kind: 'value',
    detail: 'as the catalogue has it',
    text: written,
    from: start,
    to: start + text.length,
  }));
}

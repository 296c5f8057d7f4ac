import type { Direction } from '../../schemas/redline.ts';
import type { Circuit, Hazard, Item } from '../catalogue/index.ts';
import { printAsWritten, type Quantity } from '../quantity/index.ts';
import { compareText } from '../source/index.ts';
import { compareQuantities } from './compare-quantities.ts';
import type { ConditionComparer } from './conditions.ts';
import { entryMembers, type Member } from './entry-members.ts';
import { type Shift, sides } from './fact.ts';
import { hazardShifts } from './hazard-shifts.ts';
import { torqueShifts } from './torque-shifts.ts';

export interface EntryComparison {
  readonly conditions: ConditionComparer;
  /** What an id of the entries before is called after. */
  readonly idOf: (id: string) => string;
  /** True where the manual's own rule for both torques has changed, which is told by itself. */
  readonly isToldByRule: (before: Item, after: Item) => boolean;
}

/** How an entry of the catalogue changed. */
export function entryShifts(
  before: Item,
  after: Item,
  { conditions, idOf, isToldByRule }: EntryComparison,
): readonly Shift[] {
  if (before.kind !== after.kind) {
    return [{ kind: 'entry-field', field: 'kind', before: before.kind, after: after.kind }];
  }
  const when = conditions.shift(conditionsOf(before), conditionsOf(after));
  return [
    ...(isToldByRule(before, after) ? [] : torqueShifts(torqueOf(before), torqueOf(after))),
    ...countShifts(before, after),
    ...(before.kind === 'circuit' && after.kind === 'circuit' ? fluidShifts(before, after) : []),
    ...(before.kind === 'hazard' && after.kind === 'hazard'
      ? hazardShifts(wordsOf(before), wordsOf(after))
      : []),
    ...limitShifts(before, after),
    ...(when === undefined ? [] : [before.kind === 'hazard' ? { ...when, field: 'hazard' } : when]),
    ...memberShifts(
      entryMembers(before, idOf),
      entryMembers(after, (id) => id),
    ),
  ];
}

const conditionsOf = ({ when }: Item) => (when === undefined ? [] : [when]);
const torqueOf = (item: Item) => ('torque' in item ? item.torque : undefined);
const countOf = (item: Item): number => ('count' in item ? item.count : 1);
const wordsOf = ({ signal, hazard, harm, avoid }: Hazard) => ({ signal, hazard, harm, avoid });

function countShifts(before: Item, after: Item): readonly Shift[] {
  const [a, b] = [countOf(before), countOf(after)];
  if (a === b) return [];
  const direction: Direction = b < a ? 'lower' : 'higher';
  return [{ kind: 'count', before: String(a), after: String(b), direction }];
}

function fluidShifts(before: Circuit, after: Circuit): readonly Shift[] {
  const mixOf = ({ mix }: Circuit): string => mix.map(({ name }) => name).join('\n');
  const fluid: Shift[] =
    before.fluid === after.fluid
      ? []
      : [{ kind: 'fluid', before: before.fluid, after: after.fluid }];
  const shares = before.mix.some(({ name, share }) => {
    const other = after.mix.find((part) => part.name === name);
    return other === undefined || compareQuantities(share, other.share).how === 'other';
  });
  const mix: Shift[] =
    shares || mixOf(before) !== mixOf(after)
      ? [{ kind: 'mix', ...sides(mixText(before), mixText(after)) }]
      : [];
  return [...fluid, ...mix, ...quantityShifts('capacity', before.capacity, after.capacity)];
}

const mixText = ({ mix }: Circuit): string | undefined =>
  mix.length === 0
    ? undefined
    : mix.map(({ name, share }) => `${name} ${printAsWritten(share)}`).join(', ');

function limitShifts(before: Item, after: Item): readonly Shift[] {
  const names = new Set([...before.limits, ...after.limits].map(({ name }) => name ?? ''));
  return [...names].sort(compareText).flatMap((name) => {
    const of = (item: Item) => item.limits.find((limit) => (limit.name ?? '') === name)?.quantity;
    const field = name === '' ? {} : { field: name };
    return quantityShifts('limit', of(before), of(after)).map((shift) => ({ ...shift, ...field }));
  });
}

function memberShifts(
  before: ReadonlyMap<string, Member>,
  after: ReadonlyMap<string, Member>,
): readonly Shift[] {
  const fields = [...new Set([...before.keys(), ...after.keys()])].sort(compareText);
  return fields.flatMap((field): readonly Shift[] => {
    const [a, b] = [before.get(field), after.get(field)];
    if (a?.text === b?.text) return [];
    if (a?.quantity !== undefined && b?.quantity !== undefined) {
      return quantityShifts(field === 'mass' ? 'mass' : 'entry-field', a.quantity, b.quantity).map(
        (shift) => ({ ...shift, field }),
      );
    }
    return [{ kind: 'entry-field', field, ...sides(a?.text, b?.text) }];
  });
}

/** A quantity that came, went or changed; in another unit alone it is told as that. */
export function quantityShifts(
  kind: Shift['kind'],
  before: Quantity | undefined,
  after: Quantity | undefined,
): readonly Shift[] {
  const values = sides(textOf(before), textOf(after));
  if (before === undefined || after === undefined) {
    return before === after ? [] : [{ kind, ...values }];
  }
  const shift = compareQuantities(before, after);
  if (shift.how === 'same') return [];
  if (shift.how === 'unit') return [{ kind: 'unit', ...values, field: kind }];
  return [{ kind, ...values, ...(shift.direction && { direction: shift.direction }) }];
}

const textOf = (quantity: Quantity | undefined): string | undefined =>
  quantity === undefined ? undefined : printAsWritten(quantity);

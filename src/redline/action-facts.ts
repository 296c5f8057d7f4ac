import { parseQuantity } from '../quantity/index.ts';
import type { Action } from '../syntax/index.ts';
import { compareQuantities } from './compare-quantities.ts';
import type { ConditionComparer } from './conditions.ts';
import { type Shift, sides } from './fact.ts';
import type { Names } from './names.ts';
import type { Inside } from './piece.ts';

/** What is done to what: the same on both sides of an action that only its attributes changed. */
export const actionKey = ({ verb, item }: Action, names: Names): string =>
  `${verb} ${names.item(item.id)}`;

/** Everything that an action says, for the recognition of equal ones. */
export function actionPrint({ of }: Inside<Action>, names: Names): string {
  return JSON.stringify([actionKey(of, names), ...attributesOf(of, names).values()]);
}

/** How an action that is still there changed. */
export function actionShifts(
  before: Inside<Action>,
  after: Inside<Action>,
  { names, same, conditions }: ActionComparison,
): readonly Shift[] {
  const [a, b] = [attributesOf(before.of, names), attributesOf(after.of, same)];
  const { verb } = after.of;
  const changed = [...a.keys()].flatMap((field): readonly Shift[] => {
    const [one, two] = [a.get(field), b.get(field)];
    return one === two ? [] : attributeShifts(field, one, two);
  });
  const when = conditions.shift(before.under.when, after.under.when);
  const ways =
    before.under.ways.join('\n') === after.under.ways.join('\n')
      ? []
      : [waysShift(before.under.ways, after.under.ways)];
  return [...changed, ...(when === undefined ? [] : [when]), ...ways].map((shift) => ({
    ...shift,
    verb,
  }));
}

export interface ActionComparison {
  readonly names: Names;
  readonly same: Names;
  readonly conditions: ConditionComparer;
}

/** What the technician must find, or repeat, before and after. */
export const waysShift = (before: readonly string[], after: readonly string[]): Shift => ({
  kind: 'step-way',
  ...sides(before.join(', ') || 'in any case', after.join(', ') || 'in any case'),
});

type Attributes = ReadonlyMap<string, string | undefined>;

function attributesOf(action: Action, names: Names): Attributes {
  const ids = (refs: readonly { readonly id: string }[]): string | undefined =>
    refs.length === 0 ? undefined : refs.map(({ id }) => id).join(', ');
  return new Map([
    ['qty', action.qty === undefined ? undefined : String(action.qty.count)],
    ['amount', action.amount?.text],
    ['value', action.value?.text],
    ['angle', action.angle?.text],
    ['limit', action.limit?.id],
    ['new', action.isNew ? 'yes' : undefined],
    ['to', action.to?.id],
    ['each', ids(action.each.toSorted((a, b) => (a.id < b.id ? -1 : 1)))],
    ['with', ids(action.with.map(({ id }) => ({ id: names.item(id) })))],
  ]);
}

function attributeShifts(
  field: string,
  before: string | undefined,
  after: string | undefined,
): readonly Shift[] {
  const values = sides(before, after);
  if (field === 'qty') {
    if (before === undefined || after === undefined) return [{ kind: 'quantity', ...values }];
    const direction = Number(after) < Number(before) ? 'lower' : 'higher';
    return [{ kind: 'quantity', ...values, direction }];
  }
  if (field !== 'value' && field !== 'amount' && field !== 'angle') {
    return [{ kind: 'detail', field, ...values }];
  }
  const [a, b] = [quantityOf(before), quantityOf(after)];
  if (a === undefined || b === undefined) return [{ kind: 'value', field, ...values }];
  const shift = compareQuantities(a, b);
  if (shift.how === 'same') return [];
  if (shift.how === 'unit') return [{ kind: 'unit', field, ...values }];
  return [
    { kind: 'value', field, ...values, ...(shift.direction && { direction: shift.direction }) },
  ];
}

const quantityOf = (text: string | undefined) =>
  text === undefined ? undefined : parseQuantity(text).value;

import { convert, mainUnit, type Quantity, type UnitId } from '../../quantity/index.ts';

/** Litres in the unit that a capacity is given in, with three digits: "0.5 L", "1.32 US gal". */
export function volumeText(litres: number, like: Quantity | undefined): string {
  const unit: UnitId = like === undefined ? 'L' : mainUnit(like);
  const amount = { value: litres, step: 0 };
  const { value } = convert({ form: 'single', unit: 'L', amount }, unit);
  const there = value?.form === 'single' ? value.amount.value : litres;
  return `${Number(there.toPrecision(3))} ${unit}`;
}

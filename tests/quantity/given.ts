import {
  convert,
  describeProblem,
  parseQuantity,
  type Quantity,
  type UnitId,
} from '../../src/quantity/index.ts';

/** A quantity that a test takes for granted; a text that does not parse cleanly fails the test. */
export function quantity(text: string): Quantity {
  const { value, problems } = parseQuantity(text);
  if (!value || problems.length > 0)
    throw new Error(`${text}: ${problems.map(describeProblem).join(' ')}`);
  return value;
}

/** The number that a single quantity has in another unit, unrounded. */
export function numberIn(value: number, from: UnitId, to: UnitId): number {
  const single: Quantity = {
    form: 'single',
    unit: from,
    amount: { value, step: 1 },
  };
  const converted = convert(single, to).value;
  if (converted?.form !== 'single') throw new Error(`${from} does not convert to ${to}`);
  return converted.amount.value;
}

/** A printed text with its no-break spaces made plain, to be readable in a test. */
export function plain(text: string | undefined): string | undefined {
  return text?.replaceAll('\u00a0', ' ');
}

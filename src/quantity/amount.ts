import { divide, fraction, fromDecimal, fromNumber, type Rational, toNumber } from './rational.ts';

/**
 * A number with its written fineness. `step` is one unit in the last written place (0.1 for `1.5`); a workshop
 * fraction is taken as good to a tenth of its denominator (0.025 for `3/4`). `written` is absent on a computed number.
 */
export type Amount = { readonly value: number; readonly step: number; readonly written?: string };

/** An amount as an author wrote it: `22`, `1.50`, `-40`, `3/4`, `1-1/2`. */
export function writtenAmount(written: string): Amount {
  return { value: toNumber(writtenValue(written)), step: toNumber(writtenStep(written)), written };
}

/** An amount that was worked out; the step says how fine it is to be taken, by default the finest its digits show. */
export function computedAmount(value: number, step?: number): Amount {
  return { value, step: step ?? toNumber(writtenStep(plainDecimal(value))) };
}

/** The value without binary error: from the written digits when there are any. */
export function exactValue(amount: Amount): Rational {
  return amount.written === undefined ? fromNumber(amount.value) : writtenValue(amount.written);
}

export function exactStep(amount: Amount): Rational {
  return amount.written === undefined ? fromNumber(amount.step) : writtenStep(amount.written);
}

const fractionPattern = /^(-?)(?:(\d+)-)?(\d+)\/(\d+)$/;

function writtenValue(written: string): Rational {
  const parts = fractionPattern.exec(written);
  if (!parts) return fromDecimal(written);
  const [, sign = '', whole = '0', above = '0', below = '1'] = parts;
  const n = BigInt(whole) * BigInt(below) + BigInt(above);
  return fraction(sign ? -n : n, BigInt(below));
}

function writtenStep(written: string): Rational {
  const below = fractionPattern.exec(written)?.[4];
  if (below !== undefined) return divide(fromDecimal('0.1'), fromDecimal(below));
  const decimals = /\.(\d+)/.exec(written)?.[1]?.length ?? 0;
  return fromDecimal(`1e${-decimals}`);
}

/** A double without an exponent, so that its decimals can be counted. */
function plainDecimal(value: number): string {
  const [digits = '0', exponent = '0'] = String(value).split('e');
  const decimals = Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(exponent));
  return decimals === 0 ? '0' : `0.${'0'.repeat(decimals)}`;
}

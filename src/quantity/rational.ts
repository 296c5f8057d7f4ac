/** An exact fraction in lowest terms; the denominator is positive. Keeps ties and limits free of binary error. */
export type Rational = { readonly n: bigint; readonly d: bigint };

export type RoundingMode = 'half-even' | 'down' | 'up';

export const zero: Rational = { n: 0n, d: 1n };

/** The exact value of a decimal text such as `25.4`, `-0.05` or `1e-7`. Throws on any other text: a fault of ours. */
export function fromDecimal(text: string): Rational {
  const match = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/.exec(text);
  if (!match) throw new RangeError(`not a decimal number: ${text}`);
  const [, sign = '', whole = '', decimals = '', exponent = '0'] = match;
  const digits = BigInt(whole + decimals) * (sign ? -1n : 1n);
  const power = Number(exponent) - decimals.length;
  return power < 0 ? fraction(digits, tenTo(-power)) : fraction(digits * tenTo(power), 1n);
}

/** The value of the shortest decimal that names this double, so that 19.05 is 19.05 and not its binary neighbour. */
export function fromNumber(value: number): Rational {
  return fromDecimal(String(value));
}

export function fraction(n: bigint, d: bigint): Rational {
  if (d === 0n) throw new RangeError('a fraction with denominator 0');
  const sign = d < 0n ? -1n : 1n;
  const shared = greatestCommonDivisor(n < 0n ? -n : n, d * sign);
  return { n: (n * sign) / shared, d: (d * sign) / shared };
}

export function add(a: Rational, b: Rational): Rational {
  return fraction(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function subtract(a: Rational, b: Rational): Rational {
  return fraction(a.n * b.d - b.n * a.d, a.d * b.d);
}

export function multiply(a: Rational, b: Rational): Rational {
  return fraction(a.n * b.n, a.d * b.d);
}

export function divide(a: Rational, b: Rational): Rational {
  return fraction(a.n * b.d, a.d * b.n);
}

export function absolute(a: Rational): Rational {
  return a.n < 0n ? { n: -a.n, d: a.d } : a;
}

/** Negative when a < b, 0 when equal, positive when a > b. */
export function compare(a: Rational, b: Rational): number {
  const difference = a.n * b.d - b.n * a.d;
  return difference < 0n ? -1 : difference > 0n ? 1 : 0;
}

export function smaller(a: Rational, b: Rational): Rational {
  return compare(a, b) <= 0 ? a : b;
}

export function larger(a: Rational, b: Rational): Rational {
  return compare(a, b) >= 0 ? a : b;
}

/** 10 to a whole power, negative ones too. */
export function powerOfTen(power: number): Rational {
  return power < 0 ? { n: 1n, d: tenTo(-power) } : { n: tenTo(power), d: 1n };
}

/** The exponent of the largest power of ten that is not above a positive value. */
export function floorLog10(a: Rational): number {
  if (a.n <= 0n) throw new RangeError('no logarithm of a value that is not positive');
  const guess = a.n.toString().length - a.d.toString().length;
  return compare(powerOfTen(guess), a) <= 0 ? guess : guess - 1;
}

/** Rounds to a multiple of 10^place. `down` and `up` are towards minus and plus infinity. */
export function roundTo(a: Rational, place: number, mode: RoundingMode): Rational {
  const unit = powerOfTen(place);
  const scaled = divide(a, unit);
  const floor = floorDivide(scaled.n, scaled.d);
  const rest = subtract(scaled, { n: floor, d: 1n });
  return multiply({ n: floor + stepUp(floor, rest, mode), d: 1n }, unit);
}

/** The decimal text of a multiple of 10^place, with every decimal down to that place: 11 at place -1 is `11.0`. */
export function decimalText(multiple: Rational, place: number): string {
  const decimals = Math.max(0, -place);
  const scaled = multiply(multiple, powerOfTen(decimals));
  const digits = (scaled.n < 0n ? -scaled.n : scaled.n).toString().padStart(decimals + 1, '0');
  const cut = digits.length - decimals;
  const sign = scaled.n < 0n ? '-' : '';
  return sign + digits.slice(0, cut) + (decimals > 0 ? `.${digits.slice(cut)}` : '');
}

/** The nearest double. */
export function toNumber(a: Rational): number {
  if (a.n === 0n) return 0;
  const size = absolute(a);
  const shift = 40 - floorLog10(size);
  const scaled = multiply(size, powerOfTen(shift));
  const whole = scaled.n / scaled.d;
  // A last digit that says "and a little more" makes the final decimal-to-double rounding the only one.
  const sticky = whole * scaled.d === scaled.n ? '0' : '1';
  return Number(`${a.n < 0n ? '-' : ''}${whole}${sticky}e${-shift - 1}`);
}

function stepUp(floor: bigint, rest: Rational, mode: RoundingMode): bigint {
  if (rest.n === 0n || mode === 'down') return 0n;
  if (mode === 'up') return 1n;
  const half = compare(rest, { n: 1n, d: 2n });
  if (half !== 0) return half > 0 ? 1n : 0n;
  return floor % 2n === 0n ? 0n : 1n;
}

function floorDivide(n: bigint, d: bigint): bigint {
  const quotient = n / d;
  return n < 0n && quotient * d !== n ? quotient - 1n : quotient;
}

function tenTo(power: number): bigint {
  return tens[power] ?? 10n ** BigInt(power);
}

const tens: readonly bigint[] = Array.from({ length: 64 }, (_, power) => 10n ** BigInt(power));

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [x, y] = [a, b];
  while (y !== 0n) [x, y] = [y, x % y];
  return x === 0n ? 1n : x;
}

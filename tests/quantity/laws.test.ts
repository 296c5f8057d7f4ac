import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  convert,
  defaultUnitPolicy,
  describeProblem,
  findQuantities,
  isOnlySpelling,
  kindOfUnit,
  parseQuantity,
  parseTorqueSpec,
  printAsWritten,
  printByPolicy,
  printPieces,
  type Quantity,
  sameQuantity,
  toUcum,
  type UnitId,
  unitIds,
  writtenAmount,
} from '../../src/quantity/index.ts';
import { numberIn } from './given.ts';

const unit = fc.constantFrom(...unitIds);

/** Two units of one kind. */
const unitPair = unit.chain((from) =>
  fc.tuple(
    fc.constant(from),
    fc.constantFrom(...unitIds.filter((to) => kindOfUnit(to) === kindOfUnit(from))),
  ),
);

const decimal = fc
  .tuple(fc.integer({ min: 1, max: 99999 }), fc.integer({ min: 0, max: 4 }))
  .map(([digits, decimals]) => (digits / 10 ** decimals).toFixed(decimals));

const slashFraction = fc
  .tuple(
    fc.integer({ min: 0, max: 12 }),
    fc.integer({ min: 1, max: 63 }),
    fc.constantFrom(2, 4, 8, 16, 32, 64),
  )
  .filter(([, above, below]) => above < below)
  .map(([whole, above, below]) => `${whole === 0 ? '' : `${whole}-`}${above}/${below}`);

const number = fc.oneof(decimal, slashFraction).map(writtenAmount);
const positivePair = fc
  .tuple(decimal.map(writtenAmount), decimal.map(writtenAmount))
  .filter(([a, b]) => a.value !== b.value)
  .map(([a, b]) => (a.value < b.value ? ([a, b] as const) : ([b, a] as const)));

/** A sound quantity of any single-measure form in this unit. */
function measureIn(of: UnitId): fc.Arbitrary<Exclude<Quantity, { form: 'torque-angle' }>> {
  return fc.oneof(
    number.map((amount) => ({ form: 'single' as const, unit: of, amount })),
    fc
      .tuple(fc.constantFrom('max' as const, 'min' as const), number)
      .map(([limit, amount]) => ({ form: 'limit' as const, unit: of, limit, amount })),
    positivePair.map(([low, high]) => ({ form: 'range' as const, unit: of, low, high })),
    positivePair.map(([tolerance, amount]) => ({
      form: 'tolerance' as const,
      unit: of,
      amount,
      by: 'amount' as const,
      tolerance,
    })),
  );
}

const measure = unit.chain(measureIn);
const measureAndUnit = unitPair.chain(([from, to]) => fc.tuple(measureIn(from), fc.constant(to)));

function reparsed(text: string): Quantity {
  const { value, problems } = parseQuantity(text);
  if (!value || problems.length > 0) throw new Error(`${text}: ${problems.map(describeProblem)}`);
  return value;
}

function printedIn(quantity: Quantity, to: UnitId): Quantity {
  return reparsed(printPieces(quantity, { first: to }).value?.first ?? '');
}

/** The ends a measure allows, as numbers in one unit. */
function endsIn(quantity: Quantity, to: UnitId): { low?: number; high?: number } {
  const ends = toUcum(quantity);
  if (quantity.form === 'torque-angle' || ends.form === 'torque-angle') return {};
  const low = 'low' in ends ? ends.low : undefined;
  const high = 'high' in ends ? ends.high : undefined;
  const there = (value: number | undefined) =>
    value === undefined ? undefined : numberIn(value, quantity.unit, to);
  return { low: there(low), high: there(high) };
}

describe('laws', () => {
  test('what is printed parses to the same quantity, for every unit and form', () => {
    fc.assert(
      fc.property(measure, (quantity) => {
        expect(reparsed(printAsWritten(quantity))).toEqual(quantity);
      }),
      { numRuns: 2000 },
    );
  });

  test('a torque with an angle prints and parses back', () => {
    fc.assert(
      fc.property(measureIn('N·m'), measureIn('°'), (torque, angle) => {
        const text = `${printAsWritten(torque)} + ${printAsWritten(angle)}`;
        expect(reparsed(text)).toEqual({ form: 'torque-angle', torque, angle });
      }),
    );
  });

  test('there and back is the same to 1e-12', () => {
    fc.assert(
      fc.property(
        unitPair,
        fc.double({ min: 1e-6, max: 1e9, noNaN: true }),
        ([from, to], value) => {
          const back = numberIn(numberIn(value, from, to), to, from);
          // A temperature near the zero of one scale keeps its absolute, not its relative, error.
          const size = kindOfUnit(from) === 'temperature' ? Math.max(value, 1000) : value;
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * size);
        },
      ),
      { numRuns: 2000 },
    );
  });

  test('conversion keeps the order', () => {
    fc.assert(
      fc.property(unitPair, positivePair, ([from, to], [low, high]) => {
        expect(numberIn(low.value, from, to)).toBeLessThan(numberIn(high.value, from, to));
      }),
    );
  });

  test('a printed limit, range or tolerance stays inside the written one', () => {
    fc.assert(
      fc.property(measureAndUnit, ([quantity, to]) => {
        fc.pre(quantity.form !== 'single');
        const written = endsIn(quantity, to);
        const printed = endsIn(printedIn(quantity, to), to);
        expect('low' in printed).toBe('low' in written);
        // The ends are doubles of exact decimals, so the rounding of a double is allowed for.
        const slack =
          1e-12 * Math.max(Math.abs(written.low ?? 0), Math.abs(written.high ?? 0), 1e-6);
        const leeway = kindOfUnit(to) === 'temperature' ? 1e-9 : slack;
        if (printed.high !== undefined)
          expect(printed.high).toBeLessThanOrEqual((written.high ?? Number.NaN) + leeway);
        if (printed.low !== undefined)
          expect(printed.low).toBeGreaterThanOrEqual((written.low ?? Number.NaN) - leeway);
      }),
      { numRuns: 2000 },
    );
  });

  test('what is printed in another unit agrees with what was written', () => {
    fc.assert(
      fc.property(measureAndUnit, ([quantity, to]) => {
        const printed = printedIn(quantity, to);
        expect(sameQuantity(quantity, printed)).toBe(true);
        expect(sameQuantity(printed, quantity)).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('a quantity is the same as itself, converted', () => {
    fc.assert(
      fc.property(measureAndUnit, ([quantity, to]) => {
        const { value } = convert(quantity, to);
        expect(value && sameQuantity(quantity, value)).toBe(true);
      }),
    );
  });

  test('quantities and problems are plain JSON', () => {
    fc.assert(
      fc.property(measure, (quantity) => {
        expect(JSON.parse(JSON.stringify(quantity))).toEqual(quantity);
      }),
    );
  });

  const anyText = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.string({ unit: 'binary' }),
    fc
      .array(
        fc.constantFrom(
          ...[
            '22',
            '1,5',
            '½',
            '3/4',
            '.5',
            '-',
            '−',
            '±',
            '+/-',
            '+',
            '..',
            '–',
            ' to ',
            'max ',
            'min ',
            ' ',
            '\u00a0',
          ],
          ...[
            'N·m',
            'Nm',
            'lbf·ft',
            'gal',
            'in',
            'turn',
            '°',
            '°C',
            '%',
            'back off ',
            '(',
            ')',
            '.',
            ',',
            '1/0',
            '9'.repeat(400),
          ],
        ),
        { maxLength: 12 },
      )
      .map((parts) => parts.join('')),
  );

  test('no text makes anything throw, and every problem lies inside the text and has words', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const parsed = parseQuantity(text);
        for (const problem of parsed.problems) {
          expect(problem.start).toBeGreaterThanOrEqual(0);
          expect(problem.end).toBeGreaterThanOrEqual(problem.start);
          expect(problem.end).toBeLessThanOrEqual(text.length);
          expect(describeProblem(problem)).toMatch(/^\S.*[.?]$/s);
          expect(JSON.parse(JSON.stringify(problem))).toEqual(problem);
        }
        expect(parsed.value !== undefined).toBe(parsed.problems.every(isOnlySpelling));
        if (parsed.value) printByPolicy(parsed.value, defaultUnitPolicy);
        parseTorqueSpec([text, text]);
        let last = 0;
        for (const { start, end, quantity, problems } of findQuantities(text)) {
          expect(start).toBeGreaterThanOrEqual(last);
          expect(end).toBeGreaterThan(start);
          expect(quantity !== undefined || problems.length > 0).toBe(true);
          last = end;
        }
        expect(last).toBeLessThanOrEqual(text.length);
      }),
      { numRuns: 5000 },
    );
  });
});

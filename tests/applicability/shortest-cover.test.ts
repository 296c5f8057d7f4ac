import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverLength, cubeSet } from '../../src/applicability/cube.ts';
import { Diagrams } from '../../src/applicability/diagrams.ts';
import { irredundantCover } from '../../src/applicability/irredundant-cover.ts';
import { primeCubes } from '../../src/applicability/prime-cubes.ts';
import { shortestCover } from '../../src/applicability/shortest-cover.ts';
import type { VariantSet } from '../../src/applicability/variant-set.ts';

/** A function of so many two-valued attributes; the first is the highest bit of a minterm's number. */
function boolean(variables: number) {
  const diagrams = new Diagrams();
  for (let level = 0; level < variables; level += 1) diagrams.addLevel(2);
  const minterms = (numbers: readonly number[]): VariantSet =>
    numbers
      .map((number) =>
        cubeSet(
          diagrams,
          Array.from({ length: variables }, (_, level) => ({
            level,
            values: [(number >> (variables - 1 - level)) & 1],
          })),
        ),
      )
      .reduce((a, b) => diagrams.or(a, b), diagrams.none);
  return { diagrams, minterms };
}

function shortest(variables: number, on: readonly number[], free: readonly number[] = []) {
  const { diagrams, minterms } = boolean(variables);
  const set = minterms(on);
  const off = diagrams.minus(diagrams.full, minterms([...on, ...free]));
  const cover = shortestCover(diagrams, set, off);
  if (cover === undefined) throw new Error('so small a function has a cover');
  const union = cover.map((cube) => cubeSet(diagrams, cube)).reduce((a, b) => diagrams.or(a, b));
  expect(diagrams.covers(union, set)).toBe(true);
  expect(diagrams.and(union, off)).toBe(diagrams.none);
  const letters = cover.map((cube) =>
    cube.map(({ level, values }) => `${'ABCDE'[level]}${values[0] === 1 ? '' : '’'}`).join(''),
  );
  return { letters, length: coverLength(diagrams, cover) };
}

/** Worked examples of two-level minimisation as textbooks of switching theory give them; from memory. */
describe('textbook examples', () => {
  test('Quine–McCluskey, f(A,B,C,D) = Σm(4,8,10,11,12,15) + d(9,14): three terms', () => {
    const { letters, length } = shortest(4, [4, 8, 10, 11, 12, 15], [9, 14]);
    expect(length).toMatchObject({ parts: 3, names: 7 });
    expect(letters).toContain('BC’D’');
    expect(letters).toContain('AC');
  });

  test('the cyclic function Σm(0,1,2,5,6,7) of three variables: no essential prime, three terms', () => {
    expect(shortest(3, [0, 1, 2, 5, 6, 7]).length).toMatchObject({ parts: 3, names: 6 });
  });

  test('majority of three', () => {
    expect(shortest(3, [3, 5, 6, 7]).letters).toEqual(['AB', 'AC', 'BC']);
  });

  test('consensus: AB + A’C + BC is AB + A’C', () => {
    expect(shortest(3, [1, 3, 6, 7]).letters).toEqual(['A’C', 'AB']);
  });

  test('parity of four: eight terms of four, nothing can be joined', () => {
    const odd = [1, 2, 4, 7, 8, 11, 13, 14];
    expect(shortest(4, odd).length).toMatchObject({ parts: 8, names: 32 });
  });
});

describe('laws, over attributes of two to four values', () => {
  const sets = fc
    .array(fc.integer({ min: 2, max: 4 }), { minLength: 1, maxLength: 5 })
    .chain((widths) => {
      const literal = fc
        .nat({ max: widths.length - 1 })
        .chain((level) =>
          fc
            .subarray([...Array(widths[level] ?? 2).keys()], { minLength: 1 })
            .map((values) => ({ level, values })),
        );
      const sum = fc.array(fc.array(literal, { minLength: 1, maxLength: 4 }), { maxLength: 6 });
      return fc.tuple(fc.constant(widths), sum, sum);
    })
    .map(([widths, inner, free]) => {
      const diagrams = new Diagrams();
      for (const width of widths) diagrams.addLevel(width);
      const set = (sum: typeof inner) =>
        sum
          .map((tests) =>
            tests
              .map(({ level, values }) => diagrams.literal(level, values))
              .reduce((a, b) => diagrams.and(a, b), diagrams.full),
          )
          .reduce((a, b) => diagrams.or(a, b), diagrams.none);
      const lower = set(inner);
      return { diagrams, lower, upper: diagrams.or(lower, set(free)) };
    });

  test('the irredundant cover lies between its bounds and can spare no cube', () => {
    fc.assert(
      fc.property(sets, ({ diagrams, lower, upper }) => {
        const cover = irredundantCover(diagrams, lower, upper, 1000);
        if (cover === undefined) throw new Error('so small a function has a cover');
        const union = (cubes: typeof cover) =>
          cubes.reduce((set, cube) => diagrams.or(set, cubeSet(diagrams, cube)), diagrams.none);
        expect(diagrams.covers(upper, union(cover))).toBe(true);
        expect(diagrams.covers(union(cover), lower)).toBe(true);
        for (const spare of cover) {
          const others = cover.filter((cube) => cube !== spare);
          expect(diagrams.covers(union(others), lower)).toBe(false);
        }
      }),
    );
  });

  test('primes: together the whole set, none within it can be widened, none is missing', () => {
    fc.assert(
      fc.property(sets, ({ diagrams, upper }) => {
        const primes = primeCubes(diagrams, upper, 100_000, { spend: () => true });
        if (primes === undefined) throw new Error('the limit is far');
        const all = new Set(primes.map((cube) => cubeSet(diagrams, cube)));
        expect(all.size).toBe(primes.length);
        expect([...all].reduce((a, b) => diagrams.or(a, b), diagrams.none)).toBe(upper);
        for (const cube of primes) {
          for (const [index, { level, values }] of cube.entries()) {
            for (let value = 0; value < diagrams.width(level); value += 1) {
              if (values.includes(value)) continue;
              const wider = cube.with(index, { level, values: [...values, value].sort() });
              expect(diagrams.covers(upper, cubeSet(diagrams, wider))).toBe(false);
            }
          }
        }
        // Every cube of one machine each lies in a prime that widening finds, so each such prime is listed.
        const found = irredundantCover(diagrams, upper, upper, 1000) ?? [];
        for (const cube of found) expect(all.has(cubeSet(diagrams, cube))).toBe(true);
      }),
    );
  });
});

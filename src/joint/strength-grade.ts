import { unitSize } from '../quantity/index.ts';
import type { ReadStrength, Strength } from './strength.ts';

/**
 * Reads a grade of SAE J429: `5`, `8`, `8.2`, `Grade 5`. Grades of other standards (B7, A325) and withdrawn ones
 * have no value and no problem.
 */
export function parseGrade(text: string): ReadStrength {
  const plain = text.trim().replace(/^(?:SAE ?)?(?:J429 ?)?(?:grade|gr\.?|g)? ?/i, '');
  const name = /^\d+(?:\.\d+)?$/.exec(plain)?.[0];
  if (name === undefined || withdrawn.includes(name)) return {};
  const value = grades.get(name);
  if (value !== undefined) return { value };
  return { problem: { member: 'grade', known: gradeNames } };
}

/** One pound-force per square inch in MPa. */
const psi = unitSize('psi') / unitSize('MPa');

/** Stress under proof load in psi up to a nominal diameter in inches, SAE J429. */
const stresses: readonly (readonly [string, ...(readonly [upTo: number, stress: number])[]])[] = [
  ['1', [1.5, 33_000]],
  ['2', [0.75, 55_000], [1.5, 33_000]],
  ['4', [1.5, 65_000]],
  ['5', [1, 85_000], [1.5, 74_000]],
  ['5.1', [0.625, 85_000]],
  ['5.2', [1, 85_000]],
  ['8', [1.5, 120_000]],
  ['8.1', [1.5, 120_000]],
  ['8.2', [1, 120_000]],
];

const withdrawn: readonly string[] = ['3', '6', '7'];

const grades: ReadonlyMap<string, Strength> = new Map(
  stresses.map(([name, ...ranges]) => [
    name,
    {
      name: `grade ${name}`,
      isStainless: false,
      proof: ranges.map(([inches, stress]) => ({
        upTo: inches * unitSize('in'),
        stress: stress * psi,
      })),
    },
  ]),
);

/** The grades that are known, for a message. */
const gradeNames: readonly string[] = [...grades.keys()];

import { parsePropertyClass } from './property-class.ts';
import type { ReadStrength } from './strength.ts';
import { parseGrade } from './strength-grade.ts';

/** Reads the text of `class` or `grade`. One that belongs to the other member says so. */
export function parseStrength(member: 'class' | 'grade', text: string): ReadStrength {
  const [parse, other] =
    member === 'class' ? [parsePropertyClass, parseGrade] : [parseGrade, parsePropertyClass];
  const read = parse(text);
  // A bare number is no reason to think of a metric class: grade 9 is not the class of a nut.
  const mayBelong = member === 'class' || /[.-]/.test(text);
  if (read.problem === undefined || !mayBelong || other(text).value === undefined) return read;
  return { problem: { ...read.problem, belongs: member === 'class' ? 'grade' : 'class' } };
}

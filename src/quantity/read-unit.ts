import type { QuantityProblem, Stretch } from './problem.ts';
import type { UnitId } from './unit.ts';
import { longestUnitName, lookUpUnit, type UnitName, unitsLike } from './unit-lookup.ts';

/** A unit looked for at a place. `unit` is set when it is known, `problem` when there is something to tell. */
export type UnitReading = Stretch & {
  readonly unit?: UnitId;
  readonly spelling?: 'standard' | 'short' | 'word';
  readonly problem?: QuantityProblem;
};

/** Reads the unit at a place; undefined when there is none. */
export type UnitReader = (text: string, at: number) => UnitReading | undefined;

/** Reads a unit where only a quantity is expected, so that a name nobody knows is a problem and not plain text. */
export function readUnitInValue(text: string, at: number): UnitReading | undefined {
  return readKnownUnit(text, at, () => true) ?? unknownUnit(text, at);
}

/** The longest known unit name that begins here, ends at a word boundary and is acceptable to the caller. */
export function readKnownUnit(
  text: string,
  at: number,
  accepts: (written: string, end: number, name: UnitName) => boolean,
): UnitReading | undefined {
  for (let end = Math.min(text.length, at + longestUnitName); end > at; end--) {
    if (!endsUnit(text, end)) continue;
    const written = text.slice(at, end);
    const name = lookUpUnit(written);
    if (name && accepts(written, end, name)) return told(at, end, written, name);
  }
  return undefined;
}

function told(start: number, end: number, written: string, name: UnitName): UnitReading {
  if (name.is === 'ambiguous') {
    const problem = { code: 'unit-ambiguous', start, end, written, choices: name.choices } as const;
    return { start, end, problem };
  }
  const known = { start, end, unit: name.unit, spelling: name.spelling };
  if (name.spelling === 'standard') return known;
  return { ...known, problem: { code: 'unit-spelling', start, end, written, standard: name.unit } };
}

/** Whether a unit name may end here: not inside a word, a product, a quotient or a power. */
function endsUnit(text: string, end: number): boolean {
  const rest = text.slice(end, end + 2);
  if (/^[\p{L}\p{N}\p{M}·⋅*^_°²³⁻]/u.test(rest)) return false;
  return !/^[-./‐‑'][\p{L}]/u.test(rest);
}

function unknownUnit(text: string, at: number): UnitReading | undefined {
  if (/^(?:(?:max|min|to)\b|[-−]\s*\d)/i.test(text.slice(at, at + 6))) return undefined;
  const run = /^(?:(?!\.\.|…|±|\+|\s(?:to|max|min)\b|\s?[–—]|\s-\s)[\s\S])+/u.exec(text.slice(at));
  const written = run?.[0].trimEnd() ?? '';
  if (written === '') return undefined;
  const [start, end] = [at, at + written.length];
  const near = unitsLike(written.replace(/^[-\s]+|[.\s]+$/g, ''));
  return { start, end, problem: { code: 'unit-unknown', start, end, written, near } };
}

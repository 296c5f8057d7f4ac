import { joinPieces, piecesIn, type QuantityPieces } from './print-quantity.ts';
import { kindOf, mainUnit, type Quantity } from './quantity.ts';
import { isUnitOf, kindOfUnit, sameFamily, type UnitId, type UnitOf } from './unit.ts';
import { isUnitKind, type UnitKind, unitKinds } from './unit-kind.ts';
import { lookUpUnit, unitsLike } from './unit-lookup.ts';

/** The unit printed first, or the author's own, and the one printed after it in brackets. */
export type PolicyEntry<K extends UnitKind = UnitKind> = readonly [
  first: UnitOf<K> | 'as written',
  second?: UnitOf<K>,
];

/** Which units a manual prints, for every kind of quantity. */
export type UnitPolicy = { readonly [K in UnitKind]: PolicyEntry<K> };

export type PolicyProblem =
  | { readonly code: 'kind-unknown'; readonly kind: string; readonly expected: readonly UnitKind[] }
  | {
      readonly code: 'policy-unit-unknown';
      readonly kind: UnitKind;
      readonly written: string;
      readonly near: readonly UnitId[];
    }
  | {
      readonly code: 'policy-unit-of-other-kind';
      readonly kind: UnitKind;
      readonly unit: UnitId;
      readonly unitKind: UnitKind;
    }
  | {
      readonly code: 'policy-unit-spelling';
      readonly kind: UnitKind;
      readonly written: string;
      readonly standard: UnitId;
    }
  | { readonly code: 'policy-unit-count'; readonly kind: UnitKind; readonly count: number };

/** Metric first, with the inch-pound unit of the trade second. Angles and times stay as their author gave them. */
export const defaultUnitPolicy: UnitPolicy = {
  torque: ['N·m', 'lbf·ft'],
  volume: ['L', 'US qt'],
  length: ['mm', 'in'],
  pressure: ['kPa', 'psi'],
  mass: ['kg', 'lb'],
  force: ['N', 'lbf'],
  temperature: ['°C', '°F'],
  angle: ['as written'],
  rotation: ['r/min'],
  speed: ['km/h', 'mph'],
  time: ['as written'],
  share: ['%'],
};

/** What a manual may say of units: for a kind, one unit name, or a first and a second. */
export type PolicyOverrides = Readonly<Record<string, string | readonly string[]>>;

/** The default policy with a manual's own choices in place; a choice that cannot be used leaves the default standing. */
export function unitPolicy(overrides: PolicyOverrides): {
  readonly value: UnitPolicy;
  readonly problems: readonly PolicyProblem[];
} {
  const problems: PolicyProblem[] = Object.keys(overrides)
    .filter((kind) => !isUnitKind(kind))
    .map((kind) => ({ code: 'kind-unknown', kind, expected: unitKinds }));
  const entry = <K extends UnitKind>(kind: K): PolicyEntry<K> => {
    const given = Object.hasOwn(overrides, kind) ? overrides[kind] : undefined;
    if (given === undefined) return defaultUnitPolicy[kind];
    const read = readEntry(kind, typeof given === 'string' ? [given] : given);
    problems.push(...read.problems);
    return read.value ?? defaultUnitPolicy[kind];
  };
  const value: UnitPolicy = {
    torque: entry('torque'),
    volume: entry('volume'),
    length: entry('length'),
    pressure: entry('pressure'),
    mass: entry('mass'),
    force: entry('force'),
    temperature: entry('temperature'),
    angle: entry('angle'),
    rotation: entry('rotation'),
    speed: entry('speed'),
    time: entry('time'),
    share: entry('share'),
  };
  return { value, problems };
}

/** A quantity printed in the manual's units. */
export function printByPolicy(quantity: Quantity, policy: UnitPolicy): string {
  return joinPieces(piecesByPolicy(quantity, policy));
}

/**
 * The two texts of a quantity in the manual's units. An author's unit that differs from the manual's only by a power
 * of ten (mL where the manual says L) is kept: nobody weighs grease in thousandths of a kilogram.
 */
export function piecesByPolicy(quantity: Quantity, policy: UnitPolicy): QuantityPieces {
  const own = mainUnit(quantity);
  const [, second]: PolicyEntry = policy[kindOf(quantity)];
  return piecesIn(quantity, {
    first: firstUnit(quantity, policy),
    second: second && smallFor(own, ownIfFamily(own, second)),
  });
}

/** The unit in which a quantity is printed first. */
export function firstUnit(quantity: Quantity, policy: UnitPolicy): UnitId {
  const own = mainUnit(quantity);
  const [first]: PolicyEntry = policy[kindOf(quantity)];
  return first === 'as written' ? own : ownIfFamily(own, first);
}

/** A value in grams or millilitres is said in ounces, not in hundredths of a pound or a gallon. */
function smallFor(own: UnitId, second: UnitId): UnitId {
  return (own === 'g' || own === 'mL' ? smaller.get(second) : undefined) ?? second;
}

const smaller: ReadonlyMap<UnitId, UnitId> = new Map([
  ['lb', 'oz'],
  ['US gal', 'US fl oz'],
  ['US qt', 'US fl oz'],
  ['US pt', 'US fl oz'],
  ['imp gal', 'imp fl oz'],
  ['imp qt', 'imp fl oz'],
  ['imp pt', 'imp fl oz'],
]);

function ownIfFamily(own: UnitId, wanted: UnitId): UnitId {
  return sameFamily(own, wanted) ? own : wanted;
}

function readEntry<K extends UnitKind>(
  kind: K,
  given: readonly string[],
): { value?: PolicyEntry<K>; problems: readonly PolicyProblem[] } {
  if (given.length < 1 || given.length > 2)
    return { problems: [{ code: 'policy-unit-count', kind, count: given.length }] };
  const [one = '', two] = given;
  const first =
    one.trim() === 'as written'
      ? { unit: 'as written' as const, problems: [] }
      : readPolicyUnit(kind, one);
  const second = two === undefined ? undefined : readPolicyUnit(kind, two);
  const problems = [...first.problems, ...(second?.problems ?? [])];
  if (first.unit === undefined || (second && second.unit === undefined)) return { problems };
  return { value: second ? [first.unit, second.unit] : [first.unit], problems };
}

function readPolicyUnit<K extends UnitKind>(
  kind: K,
  text: string,
): { unit?: UnitOf<K>; problems: readonly PolicyProblem[] } {
  const written = text.trim();
  const name = lookUpUnit(written);
  if (name?.is !== 'unit') {
    const near = name ? name.choices : unitsLike(written);
    return { problems: [{ code: 'policy-unit-unknown', kind, written, near }] };
  }
  const { unit } = name;
  if (!isUnitOf(unit, kind)) {
    const unitKind = kindOfUnit(unit);
    return { problems: [{ code: 'policy-unit-of-other-kind', kind, unit, unitKind }] };
  }
  if (name.spelling === 'standard') return { unit, problems: [] };
  return { unit, problems: [{ code: 'policy-unit-spelling', kind, written, standard: unit }] };
}

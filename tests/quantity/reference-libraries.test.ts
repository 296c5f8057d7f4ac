import ucum from '@lhncbc/ucum-lhc';
import { unit as mathUnit } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { kindOfUnit, type UnitId, unitIds, unitRow } from '../../src/quantity/index.ts';
import { numberIn } from './given.ts';

const reference = ucum.UcumLhcUtils.getInstance();
const amounts = [1, 0.3, 7, 44, 85, 1234.5];

function pairs(): (readonly [UnitId, UnitId])[] {
  return unitIds.flatMap((from) =>
    unitIds
      .filter((to) => to !== from && kindOfUnit(to) === kindOfUnit(from))
      .map((to) => [from, to] as const),
  );
}

function relativeError(value: number, wanted: number): number {
  return Math.abs(value - wanted) / Math.abs(wanted);
}

/** @lhncbc/ucum-lhc, a general-purpose UCUM validator and converter. */
describe('against the UCUM reference library', () => {
  test.each(unitIds)('the code of %s is valid UCUM', (unit) => {
    expect(reference.validateUnitString(unitRow(unit).ucum).status).toBe('valid');
  });

  test.each(pairs())('%s to %s', (from, to) => {
    for (const amount of amounts) {
      const { status, toVal } = reference.convertUnitTo(
        unitRow(from).ucum,
        amount,
        unitRow(to).ucum,
      );
      expect(status).toBe('succeeded');
      const value = numberIn(amount, from, to);
      if (kindOfUnit(from) === 'temperature') expect(value).toBeCloseTo(toVal ?? Number.NaN, 9);
      // UCUM rounds its column of mercury to 133.322 kPa, 3 parts in a million below SP 811.
      else
        expect(relativeError(value, toVal ?? Number.NaN)).toBeLessThan(
          from === 'inHg' || to === 'inHg' ? 1e-5 : 1e-12,
        );
    }
  });
});

/** The same units in the spelling of mathjs, a general-purpose mathematics library; its gallon, quart and pint are US. */
const mathNames: Partial<Record<UnitId, string>> = {
  N·m: 'N m',
  lbf·ft: 'lbf ft',
  lbf·in: 'lbf inch',
  kgf·m: 'kgf m',
  kgf·cm: 'kgf cm',
  L: 'L',
  mL: 'mL',
  'US gal': 'gallon',
  'US qt': 'quart',
  'US pt': 'pint',
  'US fl oz': 'fluidounce',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  km: 'km',
  µm: 'um',
  in: 'inch',
  ft: 'ft',
  thou: 'mil',
  mi: 'mile',
  kPa: 'kPa',
  MPa: 'MPa',
  bar: 'bar',
  mbar: 'mbar',
  psi: 'psi',
  'kgf/cm²': 'kgf / cm^2',
  kg: 'kg',
  g: 'g',
  t: 'tonne',
  lb: 'lbm',
  oz: 'oz',
  'short ton': 'ton',
  N: 'N',
  kN: 'kN',
  lbf: 'lbf',
  kgf: 'kgf',
  '°C': 'degC',
  '°F': 'degF',
  '°': 'deg',
  turn: 'cycle',
  'km/h': 'km / hour',
  mph: 'mile / hour',
  s: 's',
  min: 'minute',
  h: 'hour',
  d: 'day',
};

describe('against mathjs', () => {
  const known = pairs().flatMap(([from, to]) => {
    const [one, two] = [mathNames[from], mathNames[to]];
    return one && two ? [[from, to, one, two] as const] : [];
  });

  test('nearly every unit is covered', () => {
    expect(unitIds.filter((unit) => mathNames[unit] === undefined)).toEqual([
      'cN·m',
      'kN·m',
      'imp gal',
      'imp qt',
      'imp pt',
      'imp fl oz',
      'inHg',
      'long ton',
      'r/min',
      '%',
    ]);
  });

  test.each(known)('%s to %s', (from, to, one, two) => {
    for (const amount of amounts) {
      const wanted = mathUnit(amount, one).toNumber(two);
      const value = numberIn(amount, from, to);
      if (kindOfUnit(from) === 'temperature') expect(value).toBeCloseTo(wanted, 9);
      // Its psi is a rounded constant, 6 parts in 10^11 off.
      else expect(relativeError(value, wanted)).toBeLessThan(1e-9);
    }
  });
});

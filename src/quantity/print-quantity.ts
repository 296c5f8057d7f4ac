import type { Amount } from './amount.ts';
import { type KindMismatch, kindMismatch } from './convert.ts';
import { type Measure, mainUnit, type Quantity } from './quantity.ts';
import { type RoundedMeasure, roundedIn } from './rounding.ts';
import { type UnitId, unitRow } from './unit.ts';

export type PrintUnits = { readonly first: UnitId; readonly second?: UnitId };

/** `60 N·m` and, when a second unit is asked for, `44 lbf·ft`. */
export type QuantityPieces = { readonly first: string; readonly second?: string };

export type Printed<T> =
  | { readonly value: T; readonly problems: readonly [] }
  | { readonly value?: undefined; readonly problems: readonly KindMismatch[] };

/** `60 N·m (44 lbf·ft)`, with no-break spaces; a unit of another kind is a problem. */
export function printQuantity(quantity: Quantity, units: PrintUnits): Printed<string> {
  const { value, problems } = printPieces(quantity, units);
  return value ? { value: joinPieces(value), problems: [] } : { problems };
}

/** The two texts on their own, for a sheet that sets them apart. */
export function printPieces(quantity: Quantity, units: PrintUnits): Printed<QuantityPieces> {
  const asked = units.second === undefined ? [units.first] : [units.first, units.second];
  const problems = asked.flatMap((unit) => kindMismatch(quantity, unit) ?? []);
  if (problems.length > 0) return { problems };
  return { value: piecesIn(quantity, units), problems: [] };
}

/** The pieces for units already known to be of the quantity's kind. The author's own digits stay as they are. */
export function piecesIn(quantity: Quantity, { first, second }: PrintUnits): QuantityPieces {
  const one = textIn(quantity, first);
  return second === undefined || second === first
    ? { first: one }
    : { first: one, second: textIn(quantity, second) };
}

export function joinPieces({ first, second }: QuantityPieces): string {
  return second === undefined ? first : `${first} (${second})`;
}

/** The quantity in its author's unit, in the standard spelling. */
export function printAsWritten(quantity: Quantity): string {
  return textIn(quantity, mainUnit(quantity));
}

const noBreak = '\u00a0';

function textIn(quantity: Quantity, unit: UnitId): string {
  if (quantity.form !== 'torque-angle') return measureText(quantity, unit);
  const { torque, angle } = quantity;
  return `${measureText(torque, unit)} + ${measureText(angle, angle.unit)}`;
}

function measureText(measure: Measure, unit: UnitId): string {
  const parts = printedMeasure(measure, unit);
  switch (parts.form) {
    case 'single':
      return withUnit(parts.amount, unit);
    case 'limit':
      return `${parts.limit}${noBreak}${withUnit(parts.amount, unit)}`;
    case 'range':
      return withUnit(span(parts.low, parts.high), unit, parts.high);
    case 'tolerance': {
      const tolerance = signed(parts.tolerance);
      return parts.by === 'share'
        ? `${withUnit(parts.amount, unit)} ± ${tolerance}${noBreak}%`
        : withUnit(`${signed(parts.amount)} ± ${tolerance}`, unit, parts.amount);
    }
  }
}

/** The numbers that are printed: the author's own digits in his own unit, otherwise rounded ones. */
export function printedMeasure(measure: Measure, unit: UnitId): RoundedMeasure {
  return (unit === measure.unit && asWritten(measure)) || roundedIn(measure, unit);
}

/** The author's own digits, when there are any. */
function asWritten(measure: Measure): RoundedMeasure | undefined {
  const texts = (...amounts: readonly Amount[]) => amounts.flatMap(({ written }) => written ?? []);
  switch (measure.form) {
    case 'single':
    case 'limit': {
      const [amount] = texts(measure.amount);
      return amount === undefined ? undefined : { ...measure, amount };
    }
    case 'range': {
      const [low, high] = texts(measure.low, measure.high);
      return low === undefined || high === undefined ? undefined : { ...measure, low, high };
    }
    case 'tolerance': {
      const [amount, tolerance] = texts(measure.amount, measure.tolerance);
      return amount === undefined || tolerance === undefined
        ? undefined
        : { ...measure, amount, tolerance };
    }
  }
}

/** An en dash, but `to` where it could be read as a minus or part of a fraction. */
function span(low: string, high: string): string {
  const isPlain = /^[\d.]+$/.test(low + high);
  return isPlain ? `${low}–${high}` : `${signed(low)} to ${signed(high)}`;
}

function withUnit(number: string, unit: UnitId, counted: string = number): string {
  const { closeUp, plural } = unitRow(unit);
  const name = plural !== undefined && isMoreThanOne(counted) ? plural : unit;
  return `${signed(number)}${closeUp ? '' : noBreak}${name}`;
}

function isMoreThanOne(number: string): boolean {
  const [, whole, above, below] = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(number) ?? [];
  if (above === undefined || below === undefined) return Number(number) > 1;
  return whole !== undefined || Number(above) > Number(below);
}

/** A minus sign in place of the hyphen an amount is kept with. */
function signed(number: string): string {
  return number.replace(/^-/, '−');
}

import { exactValue } from './amount.ts';
import { exactlyIn } from './exact-conversion.ts';
import { nearForm } from './near-form.ts';
import { isOnlySpelling, type QuantityProblem } from './problem.ts';
import { kindOf, type Quantity } from './quantity.ts';
import { add, toNumber } from './rational.ts';
import { type QuantityReading, readQuantity } from './read-quantity.ts';
import { readUnitInValue } from './read-unit.ts';
import { remembered } from './remembered.ts';

/** A quantity when one could be understood, and everything that is wrong with how it is written. */
export type ParsedQuantity = {
  readonly value?: Quantity;
  readonly problems: readonly QuantityProblem[];
};

/**
 * Parses a text that should be one quantity and nothing else: `22 N·m`, `22 ± 2 N·m`, `20..24 N·m`, `max 5 bar`,
 * `60 N·m + 90°`, `1/4 turn`, `1-1/2 in`. Never throws; a value comes back when at most the spelling is at fault.
 */
export const parseQuantity = remembered((text: string): ParsedQuantity => {
  const reading = readQuantity(text, 0, readUnitInValue);
  if (!reading) return { problems: [nearForm(text) ?? notANumber(text)] };
  const near = isWhole(text, reading) ? undefined : nearForm(text, reading);
  if (near !== undefined) return { problems: [...reading.problems.filter(isOnlySpelling), near] };
  const problems = [...reading.problems, ...afterReading(text, reading)].sort(
    (a, b) => a.start - b.start || a.end - b.end,
  );
  return problems.every(isOnlySpelling) ? { value: reading.quantity, problems } : { problems };
});

/** Read to its end, and with nothing at fault but spelling. */
function isWhole(text: string, { end, problems }: QuantityReading): boolean {
  return problems.every(isOnlySpelling) && /^\s*\.?\s*$/.test(text.slice(end));
}

function notANumber(text: string): QuantityProblem {
  const start = text.length - text.trimStart().length;
  const written = text.trim();
  return { code: 'number-unreadable', start, end: start + written.length, written };
}

function afterReading(text: string, { start, end, quantity }: QuantityReading): QuantityProblem[] {
  const rest = text.slice(end);
  const written = rest.trim();
  // A full stop closes an abbreviation such as "3/4 in."
  if (written === '' || written === '.') return [];
  const restStart = end + rest.length - rest.trimStart().length;
  const restEnd = restStart + written.length;
  const second = readQuantity(text, restStart, readUnitInValue);
  const instead = second?.end === restEnd ? inOneUnit(quantity, second.quantity) : undefined;
  return instead === undefined
    ? [{ code: 'left-over', start: restStart, end: restEnd, written }]
    : [{ code: 'compound', start, end: restEnd, written: text.slice(start, restEnd), instead }];
}

/** `1 h 30 min` as `90 min`. */
function inOneUnit(a: Quantity | undefined, b: Quantity | undefined): string | undefined {
  if (a?.form !== 'single' || b?.form !== 'single' || kindOf(a) !== kindOf(b)) return undefined;
  const total = add(exactlyIn(exactValue(a.amount), a.unit, b.unit), exactValue(b.amount));
  return `${toNumber(total)} ${b.unit}`;
}

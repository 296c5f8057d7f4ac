import type { QuantityProblem, Stretch } from './problem.ts';
import { readUnitInProse } from './prose-units.ts';
import type { Quantity } from './quantity.ts';
import { limitWords } from './read-measure.ts';
import { numberStart } from './read-number.ts';
import { type QuantityReading, readQuantity } from './read-quantity.ts';
import { remembered } from './remembered.ts';

/** A quantity in prose. There is none when a number and a unit stand there but cannot be understood: see `problems`. */
export type FoundQuantity = Stretch & {
  readonly quantity?: Quantity;
  readonly problems: readonly QuantityProblem[];
};

/**
 * Every number with a unit in running prose, in order of place. Cautious: what may be a time of day, a step, a thread,
 * a property class, a part number or a plain word is passed over.
 */
export const findQuantities = remembered((prose: string): readonly FoundQuantity[] => {
  if (!anyNumber.test(prose)) return [];
  const found: FoundQuantity[] = [];
  const candidates = new RegExp(`(?:${limitWords}\\s*)?${numberStart}`, 'giu');
  let match = candidates.exec(prose);
  while (match) {
    const at = match.index;
    const previousEnd = found.at(-1)?.end;
    const reading = mayBegin(prose, at, previousEnd) ? quantityAt(prose, at) : undefined;
    if (reading) found.push(reading);
    candidates.lastIndex = reading ? reading.end : afterNumber(prose, at + match[0].length);
    match = candidates.exec(prose);
  }
  return found;
});

const anyNumber = new RegExp(numberStart, 'u');

function quantityAt(prose: string, at: number): FoundQuantity | undefined {
  const reading = readQuantity(prose, at, readUnitInProse);
  if (!reading) return undefined;
  const { start, end, quantity, problems } = reading;
  const joined = problems.find(({ code }) => code === 'two-units' || code === 'angle-misplaced');
  if (joined) return firstAlone(prose, at, joined);
  if (!problems.every(({ code }) => isToldInProse(code))) return undefined;
  if (quantity && isNumberWithHyphen(prose.slice(start, end), quantity)) return undefined;
  return { start, end, ...(quantity && { quantity }), problems };
}

/** `555-1234 L` is a name: nobody writes a range whose ends are more than tenfold apart with a bare hyphen. */
function isNumberWithHyphen(text: string, quantity: Quantity): boolean {
  if (quantity.form !== 'range' || !/^\d+-\d/.test(text)) return false;
  return quantity.high.value > 10 * quantity.low.value;
}

/**
 * Anything else that is wrong means that the words are not a quantity after all: "reduce from 5 to 2 bar" is no reversed
 * range, "the 3 in" is no number without a unit.
 */
function isToldInProse(code: QuantityProblem['code']): boolean {
  return (
    code === 'unit-spelling' ||
    code === 'unit-ambiguous' ||
    code === 'number-spelling' ||
    code === 'decimal-comma' ||
    code === 'vulgar-fraction'
  );
}

/** Two quantities that a dash or a plus happens to join: the first is read by itself, the second comes next. */
function firstAlone(prose: string, at: number, joined: QuantityProblem): FoundQuantity | undefined {
  const join = /[-–—−+.…\d\s]+$/u.exec(prose.slice(at, joined.start))?.[0] ?? '';
  const alone = prose.slice(0, joined.start - join.length);
  const first: QuantityReading | undefined = readQuantity(alone, at, readUnitInProse);
  return first?.quantity && { ...first, quantity: first.quantity };
}

/** Words after which a number is a name and not an amount. */
const labels =
  /(?:^|[^\p{L}])(?:steps?|fig(?:ure)?s?\.?|tables?|pages?|sections?|chapters?|para(?:graph)?s?\.?|items?|parts?|nos?\.|numbers?|refs?\.?|pos(?:itions?)?\.?|call-?outs?|notes?|rev(?:ision)?\.?|issue|version|model|type|class|grade|serial|order|code|lot|batch|stages?|rows?|columns?|detail)\s*(?:\d+\s*(?:,|and|or|to|[-–])\s*)*$/iu;

function mayBegin(prose: string, at: number, previousEnd: number | undefined): boolean {
  const before = prose.slice(Math.max(0, at - 60), at);
  if (before !== '' && !/[\s([{“‘"'«~≈≤≥<>=—]$/u.test(before))
    return /[/–-]$/u.test(before) && previousEnd === at - 1;
  if (labels.test(before)) return false;
  // "step 3 500 mL" and "1 500 mL": a name and an amount, or one amount; not told apart.
  return !(/(?:^|\s)\d{1,3}\s$/u.test(before) && /^\d{3}(?!\d)/.test(prose.slice(at, at + 4)));
}

/** Past the rest of a run such as 10:30, 2024-05-03 or 8.8, so that its tail is not taken for a number. */
function afterNumber(prose: string, at: number): number {
  const rest = /^(?:[.,:/×x-]?[\p{L}\p{N}])*/u.exec(prose.slice(at, at + 80))?.[0] ?? '';
  return at + rest.length;
}

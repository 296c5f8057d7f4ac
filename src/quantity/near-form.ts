import { exactValue } from './amount.ts';
import { isOnlySpelling, type QuantityProblem, type Stretch } from './problem.ts';
import { kindOf, mainUnit, type Quantity } from './quantity.ts';
import { add, decimalText, subtract } from './rational.ts';
import { readMeasure } from './read-measure.ts';
import { type QuantityReading, readQuantity } from './read-quantity.ts';
import { readUnitInValue } from './read-unit.ts';

/**
 * What a writer has plainly tried where a value is not in a form that is read: a hedge, a limit in other words, two
 * units, several stages, an unequal tolerance. Nothing is guessed: the value is told, with what to write.
 */
export function nearForm(text: string, reading?: QuantityReading): QuantityProblem | undefined {
  const written = text.trim();
  const start = text.length - text.trimStart().length;
  const stretch = { start, end: start + written.length, written };
  return (
    unequalTolerance(written, stretch) ??
    (reading === undefined ? inOtherWords(written, stretch) : saidTwice(text, reading))
  );
}

type Whole = Stretch & { readonly written: string };

const hedge =
  /^(?:about|approx(?:imately)?\.?|ca\.?|circa|around|nominally|[~≈∼])\s*(?=[\d.½¼¾])/iu;
const hedgeAfter = /[\s,]*(?:approx(?:imately)?\.?|or so|\(approx\.?\))$/iu;
const belowWords = /^(?:up to|less than|under|below|not over|<)\s*(?=[\d.])/i;
const aboveWords = /^(?:more than|over|above|from|not under|>)\s*(?=[\d.])/i;
const between = /^(?:between|from)\s+(.+?)\s+(?:and|to)\s+(.+)$/i;

function inOtherWords(text: string, whole: Whole): QuantityProblem | undefined {
  const [, low, high] = between.exec(text) ?? [];
  if (low !== undefined && high !== undefined && isSound(`${low}..${high}`))
    return { code: 'other-words', ...whole, instead: `${low}..${high}` };
  for (const [words, limit] of [
    [belowWords, 'max'],
    [aboveWords, 'min'],
  ] as const) {
    const rest = text.replace(words, '');
    if (rest !== text && isSound(rest))
      return { code: 'other-words', ...whole, instead: `${limit} ${rest}` };
  }
  const bare = text.replace(hedge, '').replace(hedgeAfter, '');
  return bare !== text && isSound(bare)
    ? { code: 'approximate', ...whole, instead: bare }
    : undefined;
}

const joint = /^\s*(?:([([/=])|[,;]|\+|&|then\b|and\b)\s*/i;

/** `22 N·m (16 lbf·ft)` says one value twice, `60 N·m then 90°` two of them. */
function saidTwice(text: string, { start, end, quantity }: QuantityReading) {
  if (quantity === undefined) return undefined;
  const rest = text.slice(end);
  const bare = rest.replace(hedgeAfter, '');
  const whole = { start, end: text.trimEnd().length, written: text.slice(start).trim() };
  if (bare.trim() === '')
    return { code: 'approximate' as const, ...whole, instead: text.slice(start, end).trim() };
  const lead = joint.exec(rest)?.[0].length;
  if (lead === undefined) return undefined;
  const second = readQuantity(text, end + lead, readUnitInValue);
  if (second?.quantity === undefined || !/^[\s)\].]*$/.test(text.slice(second.end)))
    return undefined;
  const first = text.slice(start, end).trim();
  if (isOneValue(quantity, second.quantity) && !/^\s*(?:\+|then|and|&|;)/i.test(rest))
    return { code: 'doubled' as const, ...whole, instead: first };
  const isTightening = kindOf(quantity) === 'torque' || kindOf(quantity) === 'angle';
  if (!isTightening || !['torque', 'angle'].includes(kindOf(second.quantity))) return undefined;
  const other = text.slice(second.start, second.end).trim();
  return { code: 'stages' as const, ...whole, instead: `[${first}, ${other}]` };
}

const isOneValue = (first: Quantity, second: Quantity): boolean =>
  kindOf(first) === kindOf(second) && mainUnit(first) !== mainUnit(second);

const unequal =
  /^(.*?[\d.])\s*(\p{L}[^\s+−-]*|°C|°F|°|%|)\s*\(?\s*\+\s*([\d.]+)\s*[/,]?\s*[-−–]\s*([\d.]+)\s*\)?\s*(.*)$/u;
const unequalTurned =
  /^(.*?[\d.])\s*(\p{L}[^\s+−-]*|°C|°F|°|%|)\s*\(?\s*[-−–]\s*([\d.]+)\s*[/,]?\s*\+\s*([\d.]+)\s*\)?\s*(.*)$/u;

/** `22 +2/-1 N·m`: a tolerance with two numbers is a range. */
function unequalTolerance(text: string, whole: Whole): QuantityProblem | undefined {
  const upFirst = unequal.exec(text);
  const [, number = '', unit1 = '', a = '', b = '', unit2 = ''] =
    upFirst ?? unequalTurned.exec(text) ?? [];
  const [up, down] = upFirst ? [a, b] : [b, a];
  const unit = unit1 === '' ? unit2.trim() : unit1;
  if (number === '' || (unit1 !== '' && unit2.trim() !== '' && unit1 !== unit2.trim()))
    return undefined;
  const [middle, above, below] = [number, up, down].map((part) => {
    const first = readMeasure(`${part} ${unit}`, 0, readUnitInValue)?.first;
    return first?.amount;
  });
  if (middle === undefined || above === undefined || below === undefined) return undefined;
  const places = Math.max(...[number, up, down].map((part) => part.split('.')[1]?.length ?? 0));
  const low = decimalText(subtract(exactValue(middle), exactValue(below)), -places);
  const high = decimalText(add(exactValue(middle), exactValue(above)), -places);
  const instead = `${low}..${high} ${unit}`;
  return isSound(instead) ? { code: 'unequal-tolerance', ...whole, instead } : undefined;
}

function isSound(text: string): boolean {
  const reading = readQuantity(text, 0, readUnitInValue);
  if (reading?.quantity === undefined) return false;
  return reading.problems.every(isOnlySpelling) && /^[\s.]*$/.test(text.slice(reading.end));
}

import { type FoundQuantity, findQuantities } from './find-quantities.ts';
import type { Limit, Quantity } from './quantity.ts';
import { kindOf, mainUnit } from './quantity.ts';
import type { UnitKind } from './unit-kind.ts';

/** A value that a text says twice, in two units: `44 lbf·ft (60 N·m)`. Offsets are those of the text. */
export type QuantityPair = {
  readonly first: FoundQuantity & { readonly quantity: Quantity };
  readonly second: FoundQuantity & { readonly quantity: Quantity };
};

/**
 * The doubled values of a text: the second stands in brackets right after the first, alone or beside a third, or after
 * `/` or `=`. Cautious: a bracket with other words in it says something of its own. A limit that is said once, before
 * the first or after the bracket, holds for both.
 */
export function findPairs(
  text: string,
  found: readonly FoundQuantity[] = findQuantities(text),
): readonly QuantityPair[] {
  const pairs: QuantityPair[] = [];
  for (const [i, first] of found.entries()) {
    for (let next = i + 1; next < found.length; next++) {
      const second = found[next];
      const last = found[next - 1];
      if (second === undefined || last === undefined) break;
      const between = text.slice(last.end, second.start);
      const isNext = next === i + 1 ? opensPair.test(between) : goesOn.test(between);
      if (!isNext) break;
      const pair = pairOf(first, second, limitAfter(text, second.end));
      if (pair === undefined) break;
      const isBracketed = /[([]/.test(text.slice(first.end, second.start));
      if (isBracketed && !closes.test(text.slice(second.end))) break;
      pairs.push(pair);
    }
  }
  return pairs;
}

const hedge = '(?:(?:about|approx(?:\\.|imately)?|or|i\\.e\\.|that is|equals?)\\s+|[≈~=]\\s*)?';
const opensPair = new RegExp(`^\\s*(?:[([]\\s*${hedge}|[/=≈]\\s*)$`, 'i');
const goesOn = new RegExp(`^\\s*[,;/=]\\s*${hedge}$`, 'i');
/** The bracket is at its end, or goes on with a further unit. */
const closes = /^\s*(?:[)\]]|[,;/=]\s*\D{0,6}\d[^()[\]]*[)\]])/;

/** Of these a bracket may well say another amount: every 500 h (30 d), 10 % (5 %). */
const neverDoubled: readonly UnitKind[] = ['time', 'share', 'rotation'];

function pairOf(
  first: FoundQuantity,
  second: FoundQuantity,
  limit: Limit['limit'] | undefined,
): QuantityPair | undefined {
  const [one, two] = [first.quantity, second.quantity];
  if (one === undefined || two === undefined) return undefined;
  const kind = kindOf(one);
  if (kind !== kindOf(two) || neverDoubled.includes(kind)) return undefined;
  if (mainUnit(one) === mainUnit(two)) return undefined;
  const said = one.form === 'limit' ? one.limit : two.form === 'limit' ? two.limit : limit;
  return {
    first: { ...first, quantity: withLimit(one, said) },
    second: { ...second, quantity: withLimit(two, said) },
  };
}

function limitAfter(text: string, end: number): Limit['limit'] | undefined {
  const words = /^\s*[)\]]\s*(max|min)(?:imum)?\b/i.exec(text.slice(end, end + 20))?.[1];
  if (words === undefined) return undefined;
  return words.toLowerCase() === 'max' ? 'max' : 'min';
}

function withLimit(quantity: Quantity, limit: Limit['limit'] | undefined): Quantity {
  if (limit === undefined || quantity.form !== 'single') return quantity;
  return { form: 'limit', unit: quantity.unit, limit, amount: quantity.amount };
}

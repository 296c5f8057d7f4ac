import type { Place } from '../../../schemas/finding.ts';
import type { Limit } from '../../catalogue/index.ts';
import type { LinkedProcedure } from '../../link/index.ts';
import { canonical, findQuantities, type Quantity, sameQuantity } from '../../quantity/index.ts';
import { type LimitedReading, limitedReadings } from './readings.ts';
import { plainWords } from './running-text.ts';
import { longestSentence, sentencesOf } from './sentences.ts';
import { stepTexts } from './step-texts.ts';

/** Two ends, a maximum or a minimum that the sentence of a measurement says in words and the catalogue does not. */
export interface WrongLimit {
  readonly reading: LimitedReading;
  readonly known: readonly Limit[];
  readonly written: string;
  readonly place: Place;
}

export function* wrongLimitsSaid(one: LinkedProcedure): Generator<WrongLimit> {
  const readings = new Map(limitedReadings(one).map((reading) => [reading.action, reading]));
  for (const { text } of stepTexts(one)) {
    for (const { start, end } of sentencesOf(text)) {
      const measured = text.stretches.flatMap(({ action, start: from }) =>
        from >= start && from < end && action?.verb === 'measure' ? [action] : [],
      );
      const [only] = measured;
      const reading = only && readings.get(only);
      const words = plainWords(text).slice(start, end);
      if (reading === undefined || measured.length > 1) continue;
      if (end - start > longestSentence || conditional.test(words)) continue;
      const known = reading.limit === undefined ? reading.item.limits : [reading.limit];
      for (const { quantity, start: from, end: to } of findQuantities(words)) {
        if (quantity === undefined || !isBound(quantity)) continue;
        if (otherBefore.test(words.slice(0, from)) || otherAfter.test(words.slice(to))) continue;
        if (!contradicts(quantity, known)) continue;
        const place = text.placeOf(start + from, start + to);
        yield { reading, known, written: words.slice(from, to), place };
      }
    }
  }
}

const conditional = /\b(?:if|when|unless|until|otherwise|was|were|formerly)\b/i;

/** What an instrument can do, or where and how often it is measured. */
const otherBefore =
  /\b(?:gauge|micrometer|calipers?|meter|indicator|range|rule|ruler|scale|wrench)\b[^,;:]*$|\b(?:at|every|after|with|by|over|from)\s+(?:an?\s+|the\s+)?$/i;
const otherAfter =
  /^\s*(?:\([^()]*\)\s*)?(?:\S+\s+)?(?:gauge|micrometer|calipers?|meter|indicator|ruler|from|apart|away|above|below|behind|beyond|inside|outside|long)\b/i;

const isBound = ({ form }: Quantity): boolean =>
  form === 'range' || form === 'tolerance' || form === 'limit';

/** Whether some limit is of the same kind, and none says the same or has this end. */
function contradicts(said: Quantity, known: readonly Limit[]): boolean {
  const { kind } = canonical(said);
  const same = known.filter(({ quantity }) => canonical(quantity).kind === kind);
  return (
    same.length > 0 &&
    !same.some(({ quantity }) => sameQuantity(quantity, said) || hasEnd(quantity, said))
  );
}

/** "at most 1.5 mm" agrees with 1.0..1.5 mm, and is no contradiction where the catalogue has no upper end. */
function hasEnd(known: Quantity, said: Quantity): boolean {
  if (said.form !== 'limit') return false;
  const end = said.limit === 'max' ? 'high' : 'low';
  const [one, two] = [canonical(known)[end], canonical(said)[end]];
  if (one === undefined || two === undefined) return true;
  return Math.abs(one.value - two.value) <= Math.max(one.step, two.step) / 2;
}

import type { SyntaxFact } from '../../syntax/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { isExpected } from '../wording/expected.ts';
import { code } from '../wording/lists.ts';

type Attribute = Extract<SyntaxFact, { kind: 'attribute-wrong' }>;

export const rule: Rule = {
  id: 'attribute-wrong',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('attribute-wrong')) {
      yield {
        place: fact.place,
        message: message(fact, code(writtenAt(examined, fact))),
        data: factsOf(fact, ['kind']),
        help: hasCurlyQuotes(examined, fact)
          ? `Write straight quotes around the value: ${code('"')} before and after it, and no “ or ”.`
          : help(fact, writtenAt(examined, fact)),
      };
    }
  },
};

/** The directive as it begins in the text, `:::when`; its bare name where the place is that of an attribute. */
function writtenAt(examined: Examined, { place, directive }: Attribute): string {
  const text = examined.text(place.file).slice(place.start.offset, place.end.offset);
  return /^:+[\p{L}\p{N}_-]+/u.exec(text)?.[0] ?? directive;
}

/** Quotes as a word processor makes them, which begin and end no value. */
function hasCurlyQuotes(examined: Examined, fact: Attribute): boolean {
  if (fact.found !== undefined) return fact.found !== fact.attribute && /^[“”„‘’]/.test(fact.found);
  if (fact.attribute !== '{…}') return false;
  const { start } = fact.place;
  const rest = examined.text(fact.place.file).slice(start.offset, start.offset + 400);
  return /^[^\r\n{}]*\{[^{}\r\n]*=[“”„‘’]/.test(rest);
}

function help(fact: Attribute, written: string): string {
  const { attribute, found, near, expected } = fact;
  if (near !== undefined) return `Perhaps ${code(near)} is meant.`;
  if (expected === once) return 'Take one of the two out.';
  if (found === attribute) {
    return expected === 'no attributes'
      ? `${code(written)} has no attributes: take it out.`
      : `${code(written)} has ${expected}.`;
  }
  if (isTooMuch(fact)) return 'Take them out, or move them to where they are to be read.';
  if (found !== undefined) return 'Correct it, or take it out.';
  if (isUnread(fact)) return `Write ${expected}.`;
  return attribute === '[…]'
    ? `Write ${code(`${written}[…]`)}.`
    : `Add ${code(`${attribute}=…`)} to its braces.`;
}

function message(fact: Attribute, written: string): string {
  const { attribute, found, expected } = fact;
  if (found === attribute) return `${code(attribute)} is no attribute of ${written}`;
  if (isUnread(fact)) {
    const part = attribute === '{…}' ? 'braces' : 'square brackets';
    return `The ${part} of ${written} cannot be read`;
  }
  if (isTooMuch(fact))
    return `${written} takes no words in square brackets, but has “${found ?? ''}”`;
  const part = attribute === '[…]' ? 'The part in square brackets' : code(attribute);
  const where = `${part} of ${written}`;
  if (found === undefined) return `${where} is missing; ${isExpected(expected)}`;
  if (expected === once) return `${where} is given twice`;
  return found === ''
    ? `${where} is empty; ${isExpected(expected)}`
    : `${where} is “${found}”; ${isExpected(expected)}`;
}

/** Brackets or braces that do not close, stand apart, or hold what cannot stand there: the text shows them, no token does. */
const isUnread = ({ attribute, found, expected }: Attribute): boolean =>
  found === undefined &&
  (attribute === '{…}' || (attribute === '[…]' && /^(?:brackets|words)\b/.test(expected)));

const isTooMuch = ({ attribute, found, expected }: Attribute): boolean =>
  attribute === '[…]' && found !== undefined && expected.startsWith('no words');

const once = 'to be given once';

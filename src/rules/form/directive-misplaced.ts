import type { Related } from '../../../schemas/finding.ts';
import { type Lost, lostFences, type Misplaced } from '../reading/lost-fences.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { related } from '../telling/related.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'directive-misplaced',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const lost of lostFences(examined)) {
      const { fact } = lost;
      const written = writtenAt(examined, fact);
      yield {
        place: fact.place,
        message: message(fact, code(written)),
        data: factsOf(fact, ['kind']),
        related: others(lost),
        help: help(lost, written),
      };
    }
  },
};

/** The directive as it begins in the text: `:::danger`. */
function writtenAt(examined: Examined, { place, name }: Misplaced): string {
  const text = examined.text(place.file).slice(place.start.offset, place.end.offset);
  return /^:+[ \t]*[\p{L}\p{N}_-]*/u.exec(text)?.[0] ?? name;
}

function message({ name, found, outer }: Misplaced, written: string): string {
  if (outer !== undefined) {
    return `${written} has no line that closes it: the next one closes ${code(openingOf(outer))} of line ${outer.line}`;
  }
  if (name === ':::') return 'This line closes no block';
  if (found.startsWith(':')) return `${written} has the wrong number of colons`;
  if (found.startsWith('no ')) return `${written} has ${coded(found)}`;
  if (found.startsWith('with ')) return `${written} is written ${found}`;
  if (found.startsWith('a second')) return `${written} stands in this step already`;
  return `${written} cannot stand ${found}`;
}

function help({ fact, leftOver }: Lost, written: string): string {
  const { name, found, expected, outer } = fact;
  if (outer !== undefined) {
    const inner = /^:+/.exec(written)?.[0].length ?? 3;
    const more = ':'.repeat(Math.max(outer.colons, inner) + 1);
    const colons = `give ${code(openingOf(outer))} in line ${outer.line} ${inWords(more.length)} colons, ${code(more + outer.name)}, and its closing line as many`;
    return leftOver === undefined
      ? `Close ${code(openingOf(outer))} with a line ${code(':::')} before this one; or, if this one is to stand inside it, close both and ${colons}.`
      : `${colons.replace('give', 'Give')}, so that this block can stand inside it.`;
  }
  if (name === ':::')
    return 'Take it out, or see that a block above is opened; an outer block needs more colons than those inside it.';
  if (found.startsWith('no line')) return `Add ${coded(expected)}.`;
  return expected.startsWith('its place')
    ? `Its place is${coded(expected.slice('its place'.length))}.`
    : `Write ${coded(expected)}.`;
}

function others({ fact, leftOver }: Lost): Related[] {
  return leftOver === undefined || fact.outer === undefined
    ? []
    : [related(leftOver.place, 'so that this line is left over')];
}

const openingOf = ({ name, colons }: { readonly name: string; readonly colons: number }): string =>
  ':'.repeat(colons) + name;

/** Text with its directives in backticks. */
const coded = (text: string): string =>
  text.replace(/:{1,}(?:[a-z-]+)?(?: \[…\])?/g, (directive) => code(directive));

const inWords = (count: number): string =>
  ({ 3: 'three', 4: 'four', 5: 'five', 6: 'six' })[count] ?? String(count);

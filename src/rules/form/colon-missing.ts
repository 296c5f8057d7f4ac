import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'colon-missing',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('colon-missing')) {
      const { place, name, near } = fact;
      const instead = near ?? ':verb';
      yield {
        place,
        message: `No colon stands directly before ${code(name)}, so that the sheet prints its brackets and braces and nothing is counted`,
        data: factsOf(fact, ['kind']),
        help: `Write ${code(`${instead}${opening(examined.text(place.file), place.end.offset)}`)}, or put a backslash before the bracket if it is to be printed.`,
        fix: replaceWord(examined, place, 'suggestion', name, near),
      };
    }
  },
};

/** The start of what follows the name, shortened. */
const opening = (text: string, offset: number): string => (text[offset] === '[' ? '[…]{…}' : '{…}');

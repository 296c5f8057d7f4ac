import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { code } from '../wording/lists.ts';

const colons = { text: ':', leaf: '::', block: ':::' } as const;

export const rule: Rule = {
  id: 'directive-unknown',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('directive-unknown')) {
      const marks = colons[fact.form];
      const written = marks + fact.name;
      const instead = fact.near === undefined ? undefined : marks + fact.near;
      yield {
        place: fact.place,
        message: `${code(written)} is no directive`,
        data: factsOf(fact, ['kind']),
        help:
          instead === undefined
            ? `Correct the word, or put a backslash before the colon if ${code(written)} is to be printed.`
            : `Write ${code(instead)}, or put a backslash before the colon if ${code(written)} is to be printed.`,
        fix: replaceWord(examined, fact.place, 'suggestion', written, instead),
      };
    }
  },
};

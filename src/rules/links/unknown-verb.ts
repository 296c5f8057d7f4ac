import type { Draft, Rule } from '../rule.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'unknown-verb',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, verb, near } of examined.facts('verb-unknown')) {
      yield {
        place,
        message: `${code(verb)} is no action that a procedure can state`,
        data: { verb, ...(near !== undefined && { near }) },
        help:
          near === undefined
            ? 'Write the verb of a directive, such as remove or drain.'
            : `Perhaps ${code(near)} is meant.`,
        fix: replaceWord(examined, place, 'suggestion', verb, near),
      };
    }
  },
};

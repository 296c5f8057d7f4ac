import type { Item } from '../../catalogue/index.ts';
import { allActions } from '../../link/index.ts';
import { allNounsOf, anyNoun } from '../reading/item-nouns.ts';
import { onceFor } from '../reading/once-for.ts';
import type { Draft, Rule } from '../rule.ts';
import { contraryVerb } from '../wording/contrary-verbs.ts';
import { code } from '../wording/lists.ts';
import { verbWords } from '../wording/verbs.ts';

export const rule: Rule = {
  id: 'verb-differs',
  family: 'words',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { id: procedure, one } of examined.subjects) {
      for (const action of allActions(one.procedure)) {
        const item = one.item(action.item);
        if (item === undefined || action.words === '') continue;
        const words = contraryVerb(action.words, action.verb, objectOf(item));
        if (words === undefined) continue;
        const { verb } = action;
        yield {
          place: action.place,
          procedure,
          item: item.id,
          message: `The words say “${words.toLowerCase()}”, but ${code(`:${verb}`)} is counted, which means to ${verbWords[verb].order}`,
          data: { words, verb },
          help: 'Correct the words or the directive, whichever is wrong.',
        };
      }
    }
  },
};

/** How much of what follows the verb names the item: "the two anvil bolts", "it", or nothing at all. */
const objectOf = (item: Item) => (after: string) => itsObject(item).exec(after)?.[0].length;

const itsObject = onceFor((item: Item) => {
  const noun = anyNoun(allNounsOf(item));
  return new RegExp(
    `^\\s*(?:(?:(?!${preposition}\\b)[\\p{L}\\d][\\p{L}\\d-]*\\s+){0,4}?${noun}(?![\\p{L}-])|(?:it|them|both|all)\\b|$)`,
    'iu',
  );
});

const preposition =
  '(?:from|to|on|onto|in|into|at|with|under|over|behind|by|for|of|between|through|against|near|and|then)';

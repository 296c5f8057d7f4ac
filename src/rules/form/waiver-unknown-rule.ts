import { nearest } from '../../source/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { waivable } from '../waiving/waivable.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'waiver-unknown-rule',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, rule: id } of examined.facts('waiver-of-no-rule')) {
      if (examined.ruleIds.includes(id)) {
        yield {
          place,
          procedure,
          message: `Findings of ${code(id)} cannot be waived`,
          data: { rule: id },
          help: 'Take the waiver out, and put right what was found.',
        };
        continue;
      }
      const near = nearest(id, waivable(examined.ruleIds));
      yield {
        place,
        procedure,
        message: `There is no rule ${code(id)}, so this waiver lets nothing pass`,
        data: { rule: id, ...(near !== undefined && { near }) },
        help:
          near === undefined
            ? 'Write the id of the rule as it stands in the finding.'
            : `Perhaps ${code(near)} is meant.`,
        fix: replaceWord(examined, place, 'suggestion', id, near),
      };
    }
  },
};

import type { Draft, Rule } from '../rule.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'waiver-reason',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, rule } of examined.facts('waiver-without-reason')) {
      yield {
        place,
        procedure,
        message: `This waiver of ${code(rule)} gives no reason, so it lets nothing pass`,
        data: { rule },
        help: `Write the reason as its body: ${code(':::waive{…}')}, the reason on the next lines, then ${code(':::')}.`,
      };
    }
  },
};

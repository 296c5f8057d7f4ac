import type { Draft, Rule } from '../rule.ts';
import { choices, code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'machine-unsaid',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, procedure, machines } of examined.facts('machine-unsaid')) {
      yield {
        place,
        procedure,
        message: `This procedure does not say for which of the ${machines.length} machines it is`,
        data: { machines: [...machines] },
        help: `Add ${code('machine:')} to the front matter, with ${choices(machines)}.`,
      };
    }
  },
};

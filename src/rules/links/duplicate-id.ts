import type { Draft, Rule } from '../rule.ts';
import { related } from '../telling/related.ts';
import { kindWord } from '../wording/kinds.ts';
import { code } from '../wording/lists.ts';

export const rule: Rule = {
  id: 'duplicate-id',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const { place, first, id, what } of examined.facts('duplicate-id')) {
      yield {
        place,
        message: `${code(id)} is the id of ${kindWord(what)} already`,
        data: { id, what },
        related: [related(first, 'the first one is here')],
        help: 'Give one of the two another id.',
      };
    }
    for (const { place, procedure, first, id, kind } of examined.facts(
      'duplicate-procedure',
      'duplicate-step',
    )) {
      const what = kind === 'duplicate-step' ? 'a step of this procedure' : 'a procedure';
      yield {
        place,
        procedure,
        message: `${code(id)} is the id of ${what} already`,
        data: { id, what },
        related: [related(first, 'the first one is here')],
        help: 'Give one of the two another id.',
      };
    }
    for (const { place, id, file } of examined.facts('machine-name-differs')) {
      yield {
        place,
        message: `The machine is called ${code(id)} here, but its file is ${code(file)}`,
        data: { id, file },
        help: `Name the file machines/${id}.yaml, or correct the id.`,
      };
    }
  },
};

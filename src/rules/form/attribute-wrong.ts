import type { SyntaxFact } from '../../syntax/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
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
        message: message(fact),
        data: factsOf(fact, ['kind']),
        help: help(fact),
      };
    }
  },
};

function help({ near, expected }: Attribute): string {
  if (near !== undefined) return `Perhaps ${code(near)} is meant.`;
  return expected === 'to be given once'
    ? 'Take one of the two out.'
    : 'Correct it, or take it out.';
}

function message({ directive, attribute, found, expected }: Attribute): string {
  if (found === attribute) {
    return `${code(attribute)} is no attribute of ${code(directive)}, which has ${expected}`;
  }
  const where = `${code(attribute)} of ${code(directive)}`;
  if (found === undefined) return `${where} is missing; ${expected} is expected`;
  return expected === 'to be given once'
    ? `${where} is given twice`
    : `${where} is “${found}”; ${expected} is expected`;
}

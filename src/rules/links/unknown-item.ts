import type { Draft, Rule } from '../rule.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { unknownReferences } from '../telling/unknown-reference.ts';
import { code } from '../wording/lists.ts';

const add = (id: string): string =>
  `Correct the id, or add ${code(id)} to the catalogue, with its name.`;

export const rule: Rule = {
  id: 'unknown-item',
  family: 'links',
  level: 'error',
  *check(examined): Generator<Draft> {
    yield* unknownReferences(
      examined,
      ['item'],
      ({ id, owner }) =>
        `${code(id)} is not in the catalogue${owner === '' ? '' : ` of ${code(owner)}`}`,
      ({ id }) => add(id),
    );
    for (const { place, id, near, machine } of examined.facts('unknown-item')) {
      yield {
        place,
        message: `${code(id)} is not in the catalogue${machine === '' ? '' : ` of ${code(machine)}`}`,
        data: { id, machine, ...(near !== undefined && { near }) },
        help: near === undefined ? add(id) : `Perhaps ${code(near)} is meant.`,
        fix: replaceWord(examined, place, 'suggestion', id, near),
      };
    }
  },
};

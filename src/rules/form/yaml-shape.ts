import type { SourceFact } from '../../source/index.ts';
import type { Draft, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { code } from '../wording/lists.ts';

type Shape = Extract<SourceFact, { kind: 'yaml-shape' }>;

export const rule: Rule = {
  id: 'yaml-shape',
  family: 'form',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('yaml-shape')) {
      yield {
        place: fact.place,
        message: message(fact),
        data: factsOf(fact, ['kind']),
        help: fact.near === undefined ? undefined : `Perhaps ${code(fact.near)} is meant.`,
        fix:
          fact.near === undefined || fact.found === undefined
            ? undefined
            : replaceWord(examined, fact.place, 'suggestion', fact.found, fact.near),
      };
    }
  },
};

function message({ path, found, expected }: Shape): string {
  const where = path === '' ? 'this file' : code(path);
  return found === undefined
    ? `In ${where}, ${expected} is expected`
    : `In ${where}, “${found}” cannot stand; ${expected} is expected`;
}

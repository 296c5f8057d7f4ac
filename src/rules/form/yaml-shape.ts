import type { SourceFact } from '../../source/index.ts';
import type { Draft, Examined, Rule } from '../rule.ts';
import { factsOf } from '../telling/json.ts';
import { replaceWord } from '../telling/replace-word.ts';
import { isExpected } from '../wording/expected.ts';
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
        message: message(fact, isKey(examined, fact)),
        data: factsOf(fact, ['kind']),
        help: help(fact),
        fix:
          fact.near === undefined || fact.found === undefined
            ? undefined
            : replaceWord(examined, fact.place, 'suggestion', fact.found, fact.near),
      };
    }
  },
};

/** Whether it stands at a key and not at a value. */
function isKey(examined: Examined, { place }: Shape): boolean {
  return /^["']?\s*:/.test(examined.text(place.file).slice(place.end.offset, place.end.offset + 9));
}

function message(fact: Shape, isAtKey: boolean): string {
  const { path, found, expected } = fact;
  const inside = path.includes('.') ? code(path.slice(0, path.lastIndexOf('.'))) : 'this file';
  const key = path.slice(path.lastIndexOf('.') + 1);
  if (keysOf(fact) !== undefined) return `${code(key)} is no key of ${inside}`;
  const where = path === '' ? 'This file' : code(path);
  if (found === undefined) {
    return path === ''
      ? `This file is empty; ${isExpected(expected)}`
      : `${inside === 'this file' ? 'This file' : inside} has no ${code(key)}; ${isExpected(expected)}`;
  }
  if (isAtKey && found === key)
    return `${code(key)} cannot be a key of ${inside}; ${isExpected(expected)}`;
  const empty = ['nothing', 'empty text', 'an empty list', 'an empty map'].includes(found);
  if (empty) return `${where} is empty; ${isExpected(expected)}`;
  const is = ['a list', 'keys and values'].includes(found) ? found : `“${found}”`;
  return `${where} is ${is}; ${isExpected(expected)}`;
}

function help(fact: Shape): string | undefined {
  if (fact.near !== undefined) return `Perhaps ${code(fact.near)} is meant.`;
  const keys = keysOf(fact);
  return keys === undefined || keys === '' ? undefined : `Its keys are ${keys}.`;
}

/** What `expected` says of the keys that may stand there, where the fault is an unknown key. */
function keysOf({ expected }: Shape): string | undefined {
  if (expected === 'no key here') return '';
  return /^(?:the key|a key of) (.*)$/.exec(expected)?.[1]?.replace(/ or (?=\S+$)/, ' and ');
}

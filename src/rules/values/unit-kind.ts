import { describeProblem, kindOf, parseQuantity } from '../../quantity/index.ts';
import { nearest } from '../../source/index.ts';
import { writtenValues } from '../reading/written-values.ts';
import type { Draft, Rule } from '../rule.ts';
import { factsOf, jsonOf } from '../telling/json.ts';
import { code, sentence } from '../wording/lists.ts';
import { twoParts } from '../wording/two-parts.ts';

export const rule: Rule = {
  id: 'unit-kind',
  family: 'values',
  level: 'error',
  *check(examined): Generator<Draft> {
    for (const fact of examined.facts('unit-wrong-kind')) {
      yield { place: fact.place, ...words(fact), data: factsOf(fact, ['kind']) };
    }
    for (const { id: procedure, one } of examined.subjects) {
      for (const { text, place, what, expected } of writtenValues(one)) {
        if (expected === undefined) continue;
        const { value } = parseQuantity(text);
        const found = value && kindOf(value);
        if (found === undefined || found === expected) continue;
        if (expected === 'torque' && found === 'angle') continue;
        const fact = { written: text, found, expected, what };
        yield { place, procedure, ...words(fact), data: fact };
      }
    }
    for (const { place, problem } of examined.facts('units-wrong')) {
      if (problem.code === 'policy-unit-unknown' || problem.code === 'policy-unit-spelling')
        continue;
      const near =
        problem.code === 'kind-unknown' ? nearest(problem.kind, problem.expected) : undefined;
      const told = twoParts(describeProblem(problem));
      yield {
        place,
        ...told,
        ...(near !== undefined && { help: `Perhaps ${code(near)} is meant.` }),
        data: { problem: jsonOf(problem) },
      };
    }
  },
};

interface WrongKind {
  readonly written: string;
  readonly found: string;
  readonly expected: string;
  readonly what: string;
}

function words({ written, found, expected, what }: WrongKind): { message: string; help: string } {
  return {
    message: sentence(`${what} is “${written}”, which measures ${found}; ${expected} is expected`),
    help: `Correct the unit, or move the value where ${found} belongs.`,
  };
}

import type { QuantityProblem } from '../../quantity/index.ts';
import { quantityProblems } from '../reading/quantity-problems.ts';
import type { Draft, Rule } from '../rule.ts';
import { replaceWord } from '../telling/replace-word.ts';

type Spelling = Extract<QuantityProblem, { code: 'unit-spelling' | 'number-spelling' }>;

export const rule: Rule = {
  id: 'unit-spelling',
  family: 'values',
  level: 'warning',
  *check(examined): Generator<Draft> {
    for (const { place, written, problem, procedure } of quantityProblems(examined)) {
      if (!isSpelling(problem)) continue;
      yield {
        place,
        procedure,
        message: `“${problem.written}” is understood as ${problem.standard}, but is not the standard spelling`,
        data: { written, found: problem.written, standard: problem.standard },
        help: `Write ${problem.standard}.`,
        fix: replaceWord(examined, place, 'fix', problem.written, problem.standard),
      };
    }
    for (const { place, problem } of examined.facts('units-wrong')) {
      if (problem.code !== 'policy-unit-spelling') continue;
      yield {
        place,
        message: `“${problem.written}” is understood as ${problem.standard}, but is not the standard spelling`,
        data: { found: problem.written, standard: problem.standard },
        help: `Write ${problem.standard}.`,
        fix: replaceWord(examined, place, 'fix', problem.written, problem.standard),
      };
    }
  },
};

const isSpelling = (problem: QuantityProblem): problem is Spelling =>
  problem.code === 'unit-spelling' || problem.code === 'number-spelling';

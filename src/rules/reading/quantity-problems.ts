import type { Place } from '../../../schemas/finding.ts';
import { allBlocks, type LinkedProcedure } from '../../link/index.ts';
import {
  type FoundQuantity,
  findQuantities,
  parseQuantity,
  type QuantityProblem,
} from '../../quantity/index.ts';
import { locator, placeWithin } from '../../source/index.ts';
import type { Examined } from '../rule.ts';
import { onceFor } from './once-for.ts';
import { blanked, type RunningText, runningTexts } from './running-text.ts';
import { writtenValues } from './written-values.ts';

/** Something wrong with how a quantity is written: in YAML, in an attribute, or in prose. */
export interface ToldProblem {
  readonly place: Place;
  readonly written: string;
  readonly problem: QuantityProblem;
  readonly procedure: string | undefined;
}

/** All of a manual, found once for all rules. */
export const quantityProblems: (examined: Examined) => readonly ToldProblem[] = onceFor(
  (examined) => [...problemsIn(examined)],
);

function* problemsIn(examined: Examined): Generator<ToldProblem> {
  for (const { place, written, problem } of examined.facts('quantity-wrong')) {
    yield { place, written, problem, procedure: undefined };
  }
  for (const { id: procedure, one } of examined.subjects) {
    const source = locator(one.procedure.file, one.procedure.text);
    for (const { text, place } of writtenValues(one)) {
      for (const problem of parseQuantity(text).problems) {
        yield {
          place: placeWithin(source, place, text, problem),
          written: text,
          problem,
          procedure,
        };
      }
    }
    for (const { text, found } of quantitiesInProse(one)) {
      for (const problem of found.problems) {
        const written = text.text.slice(found.start, found.end);
        yield { place: text.placeOf(problem.start, problem.end), written, problem, procedure };
      }
    }
  }
}

/** The quantities in all prose of a procedure; what stands in code is passed over. */
export const quantitiesInProse: (one: LinkedProcedure) => readonly QuantityInProse[] = onceFor(
  (one) =>
    [...allBlocks(one.procedure)].flatMap((block) =>
      block.type === 'prose' ? runningTexts(block, one).flatMap(quantitiesIn) : [],
    ),
);

interface QuantityInProse {
  readonly text: RunningText;
  readonly found: FoundQuantity;
}

const quantitiesIn = (text: RunningText): QuantityInProse[] =>
  findQuantities(withoutCode(text)).map((found) => ({ text, found }));

function withoutCode({ text, stretches }: RunningText): string {
  return blanked(
    text,
    stretches.filter(({ kind }) => kind === 'code'),
  );
}

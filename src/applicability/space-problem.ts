import { type ConditionMeaningProblem, describeConditionProblem } from './condition-problem.ts';

/** Faults in what a manual says of its variants. `constraint` is the index of a `never` line. */
export type SpaceProblem =
  | { readonly code: 'duplicate-attribute'; readonly attribute: string }
  | { readonly code: 'duplicate-value'; readonly attribute: string; readonly value: string }
  | {
      readonly code: 'constraint';
      readonly constraint: number;
      readonly problem: ConditionMeaningProblem;
    }
  | { readonly code: 'no-machine-left'; readonly constraint: number };

/** The problem in words: what is wrong, what was expected, what to do. */
export function describeSpaceProblem(problem: SpaceProblem): string {
  switch (problem.code) {
    case 'duplicate-attribute':
      return `The variant attribute “${problem.attribute}” is declared twice; the first one counts, so rename or drop the other.`;
    case 'duplicate-value':
      return `The variant attribute “${problem.attribute}” has the value “${problem.value}” twice; drop one.`;
    case 'constraint':
      return problem.problem.code === 'never-true'
        ? 'This “never” line is false for every machine, so it rules nothing out; correct it or drop it.'
        : describeConditionProblem(problem.problem);
    case 'no-machine-left':
      return 'With this “never” line no machine is left, so it is not applied; correct it.';
  }
}

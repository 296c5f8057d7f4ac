import type { Span } from './condition.ts';

/** What the parser was looking for. */
export type Expected = 'a test' | 'an operator' | 'a value' | 'a list of values' | 'a comma or )';

/** Faults in how a condition is written. */
export type ConditionSyntaxProblem = Span &
  (
    | { readonly code: 'empty' }
    | {
        readonly code: 'unexpected';
        readonly found: string;
        readonly expected: Expected;
        /** what to write in its place, where that is known */
        readonly instead?: string;
      }
    | { readonly code: 'incomplete'; readonly expected: Expected }
    | { readonly code: 'unclosed'; readonly opened: string }
    | { readonly code: 'too-deep'; readonly limit: number }
  );

/** Faults in what a condition means for one manual. */
export type ConditionMeaningProblem = Span &
  (
    | {
        readonly code: 'unknown-attribute';
        readonly name: string;
        readonly known: readonly string[];
        readonly near?: string;
        /** attributes that have a value of this name: the attribute was perhaps left out */
        readonly owners: readonly string[];
      }
    | {
        readonly code: 'unknown-value';
        readonly attribute: string;
        readonly name: string;
        readonly known: readonly string[];
        readonly near?: string;
      }
    | {
        readonly code: 'value-needed';
        readonly attribute: string;
        readonly known: readonly string[];
      }
    | {
        readonly code: 'unknown-branch';
        readonly label: string;
        readonly known: readonly string[];
        readonly near?: string;
      }
    | { readonly code: 'never-true' }
    | { readonly code: 'always-true' }
  );

export type ConditionProblem = ConditionSyntaxProblem | ConditionMeaningProblem;

/** The problem in words: what is wrong, what was expected, what to do. */
export function describeConditionProblem(problem: ConditionProblem): string {
  switch (problem.code) {
    case 'empty':
      return 'The condition is empty; write one such as “feed = hydraulic”, or leave “when” out.';
    case 'unexpected':
      return `“${problem.found}” cannot stand here; ${wanted(problem.expected)}.${
        problem.instead === undefined ? '' : ` Write “${problem.instead}” instead.`
      }`;
    case 'incomplete':
      return `The condition breaks off; ${wanted(problem.expected)} at its end.`;
    case 'unclosed':
      return `“${problem.opened}” is opened and never closed; add the closing ${
        problem.opened === '(' ? 'bracket' : 'quotation mark'
      }.`;
    case 'too-deep':
      return `The condition is nested more than ${problem.limit} deep; write it flatter.`;
    case 'unknown-attribute':
      return `“${problem.name}” is not a variant attribute of this manual; ${attributeAdvice(problem)}.`;
    case 'unknown-value':
      return `“${problem.name}” is not a value of “${problem.attribute}”; ${advice(problem.known, problem.near)}.`;
    case 'value-needed':
      return `“${problem.attribute}” is not a yes/no attribute, so its name alone says nothing; add a value: ${list(
        problem.known.map((value) => `${problem.attribute} = ${value}`),
      )}.`;
    case 'unknown-branch':
      return `No branch before this place is called “${problem.label}”; ${advice(problem.known, problem.near)}.`;
    case 'never-true':
      return 'The condition is false for every machine of this manual; correct it, or take out what it guards.';
    case 'always-true':
      return 'The condition is true for every machine of this manual; correct it, or leave it out.';
  }
}

function wanted(expected: Expected): string {
  switch (expected) {
    case 'a test':
      return 'a test such as “feed = hydraulic” is expected';
    case 'an operator':
      return '“&”, “|” or the end of the condition is expected';
    case 'a value':
      return 'a value is expected (put it in quotation marks if it has spaces or signs)';
    case 'a list of values':
      return 'a list such as “(petrol, diesel)” is expected';
    case 'a comma or )':
      return 'a comma or “)” is expected';
  }
}

function attributeAdvice(problem: {
  readonly name: string;
  readonly known: readonly string[];
  readonly near?: string;
  readonly owners: readonly string[];
}): string {
  if (problem.owners.length === 0) return advice(problem.known, problem.near);
  return `it is a value: write ${list(problem.owners.map((id) => `${id} = ${problem.name}`))}`;
}

function advice(known: readonly string[], near: string | undefined): string {
  if (near !== undefined) return `perhaps “${near}” is meant`;
  return known.length === 0 ? 'there is none to choose from' : `choose from ${list(known)}`;
}

function list(words: readonly string[]): string {
  const shown = words.slice(0, 8).map((word) => `“${word}”`);
  return words.length > shown.length ? `${shown.join(', ')} …` : shown.join(', ');
}

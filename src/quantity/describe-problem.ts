import type { KindMismatch } from './convert.ts';
import type { TorqueProblem } from './parse-torque-spec.ts';
import type { QuantityFault } from './problem.ts';
import type { UnitId } from './unit.ts';
import type { PolicyProblem } from './unit-policy.ts';

type Described = QuantityFault | TorqueProblem | PolicyProblem | KindMismatch;

/** The words for any problem of this room: what is wrong, what was expected, what to write. */
export function describeProblem(problem: Described): string {
  const words = wordsFor(problem);
  return 'stage' in problem ? `Stage ${problem.stage + 1}: ${words}` : words;
}

function wordsFor(problem: Described): string {
  switch (problem.code) {
    case 'unit-missing':
      return `${quoted(problem.number)} has no unit. Write the unit after the number, for example “22 N·m”.`;
    case 'unit-unknown':
      return `The unit ${quoted(problem.written)} is not known.${didYouMean(problem.near)}`;
    case 'unit-ambiguous':
      return `${quoted(problem.written)} can mean ${either(problem.choices)}. Write which one.`;
    case 'unit-spelling':
      return `The unit ${quoted(problem.written)} is understood; the standard spelling is ${quoted(problem.standard)}.`;
    case 'number-unreadable':
      return unreadable(problem.written);
    case 'number-spelling':
      return `The number ${quoted(problem.written)} is understood; write ${quoted(problem.standard)}, a lone point is easily lost.`;
    case 'decimal-comma':
      return problem.instead.length === 0
        ? `${quoted(problem.written)} has commas that cannot be read. Write the number with a decimal point and no commas.`
        : `The comma in ${quoted(problem.written)} is not read, because it can stand for a decimal point or for thousands. Write ${either(problem.instead)}.`;
    case 'vulgar-fraction':
      return `The fraction sign in ${quoted(problem.written)} is not read. Write ${quoted(problem.instead)}.`;
    case 'negative':
      return `${quoted(problem.written)} goes below zero, and ${kindWords(problem.kind)} cannot. Write a value of zero or more.`;
    case 'range-reversed':
      if (problem.low === problem.high)
        return `The range runs from ${quoted(problem.low)} to the same. Write one value, or two that differ.`;
      return `The range runs from ${quoted(problem.low)} to ${quoted(problem.high)}. The first number must be the smaller.`;
    case 'two-units':
      return `The two numbers have different units, ${quoted(problem.first)} and ${quoted(problem.second)}. Write both in one unit.`;
    case 'angle-misplaced':
      return `“+” joins ${kindWords(problem.first)} and ${kindWords(problem.second)}. Only an angle can be added, and only to a torque, for example “60 N·m + 90°”.`;
    case 'limit-of-several':
      return `“${problem.limit}” stands with two numbers. Write a limit with one number, or the range or tolerance without “${problem.limit}”.`;
    case 'share-of-temperature':
      return 'A percentage of a temperature depends on the scale. Write the tolerance in degrees.';
    case 'compound':
      return `${quoted(problem.written)} joins two numbers with two units. Write one number with one unit: ${quoted(problem.instead)}.`;
    case 'doubled':
      return `${quoted(problem.written)} gives one value in two units. The sheet works out the second one and rounds it the safe way: write only ${quoted(problem.instead)}.`;
    case 'stages':
      return `${quoted(problem.written)} is more than one stage. Write them as a list: ${problem.instead}.`;
    case 'unequal-tolerance':
      return `The tolerance of ${quoted(problem.written)} is not the same up and down. Write it as a range: ${quoted(problem.instead)}.`;
    case 'approximate':
      return `${quoted(problem.written)} does not say how near is near enough. Write ${quoted(problem.instead)}, or a range.`;
    case 'other-words':
      return `${quoted(problem.written)} is not read as it is. Write ${quoted(problem.instead)}.`;
    case 'left-over':
      return `${quoted(problem.written)} after the quantity is not understood. ${forms}`;
    case 'stage-of-other-kind':
      return `This is ${kindWords(problem.kind)}; a stage needs ${problem.wanted === 'angle' ? 'an angle to back off by' : 'a torque, an angle, or both'}, for example “20 N·m”, “60 N·m + 90°” or “back off 1/4 turn”.`;
    case 'no-stage':
      return 'There is no tightening stage. Write at least one torque, for example “22 N·m”.';
    case 'kind-mismatch':
      return `${quoted(problem.unit)} measures ${kindWords(problem.unitKind)}, and the quantity is ${kindWords(problem.kind)}.`;
    case 'kind-unknown':
      return `${quoted(problem.kind)} is not a kind of quantity. The kinds are ${problem.expected.join(', ')}.`;
    case 'policy-unit-unknown':
      return `The unit ${quoted(problem.written)} for ${problem.kind} is not known.${didYouMean(problem.near)}`;
    case 'policy-unit-of-other-kind':
      return `${quoted(problem.unit)} measures ${kindWords(problem.unitKind)} and cannot be the unit for ${problem.kind}.`;
    case 'policy-unit-spelling':
      return `The unit ${quoted(problem.written)} for ${problem.kind} is understood; the standard spelling is ${quoted(problem.standard)}.`;
    case 'policy-unit-count':
      return `${problem.count} units are given for ${problem.kind}. Give one, or a first and a second.`;
  }
}

const forms =
  'Write a number and a unit: “22 N·m”, “22 ± 2 N·m”, “20..24 N·m”, “max 5 bar”, “60 N·m + 90°” or “1/4 turn”.';

function unreadable(written: string): string {
  if (written === '') return `The value is empty. ${forms}`;
  if (/^[-−+]?[.\d]/.test(written))
    return `${quoted(written)} is not a number that can be read. Write it with digits and a decimal point, such as 1234.5, or as a fraction, such as 1-1/2.`;
  return `${quoted(written)} does not begin with a number. ${forms}`;
}

function quoted(text: string): string {
  return `“${text}”`;
}

function either(choices: readonly string[]): string {
  const named = choices.map(quoted);
  return named.length < 2
    ? named.join('')
    : `${named.slice(0, -1).join(', ')} or ${named[named.length - 1]}`;
}

function didYouMean(near: readonly UnitId[]): string {
  return near.length === 0 ? '' : ` Did you mean ${either(near)}?`;
}

const kindNames: Readonly<Record<string, string>> = {
  angle: 'an angle',
  rotation: 'a speed of rotation',
  length: 'a length',
  time: 'a time',
  share: 'a percentage',
};

function kindWords(kind: string): string {
  return kindNames[kind] ?? `a ${kind}`;
}

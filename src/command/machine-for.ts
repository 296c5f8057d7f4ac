import {
  type Condition,
  describeConditionProblem,
  parseCondition,
  resolveCondition,
  type VariantSet,
} from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import { CannotRun } from './cannot-run.ts';
import { noSuchMachine } from './no-such-machine.ts';

/** The machine that something is printed for. */
export interface MachineFor {
  /** As it was asked for. */
  readonly words: string;
  /** Every machine with the values that are fixed. */
  readonly set: VariantSet;
  /** The query that tells a page: "winch=yes&brakes=overrun". */
  readonly query: string;
  /** For names of files: "winch-yes.brakes-overrun". */
  readonly name: string;
}

/** Reads values that are fixed with `attribute = value` and joined by `&`. Throws CannotRun for all else. */
export function machineFor(words: string, { space }: ManualModel): MachineFor {
  const parsed = parseCondition(words);
  const [fault] = parsed.problems;
  if (parsed.value === undefined || fault !== undefined)
    throw new CannotRun(
      `--for “${words}”: ${fault === undefined ? 'it cannot be read.' : describeConditionProblem(fault)}`,
    );
  const { value: set, problems } = resolveCondition(space, parsed.value);
  const wrong = problems.find(({ code }) => code !== 'always-true');
  if (wrong?.code === 'never-true') throw noSuchMachine(words);
  if (wrong !== undefined)
    throw new CannotRun(`--for “${words}”: ${describeConditionProblem(wrong)}`);
  const fixed = new Map(fixedIn(parsed.value, words));
  const inOrder = space.attributes.flatMap(({ id }): [string, string][] => {
    const value = fixed.get(id);
    return value === undefined ? [] : [[id, value]];
  });
  return {
    words,
    set,
    query: new URLSearchParams(inOrder).toString(),
    name: inOrder.map((pair) => pair.map(plain).join('-')).join('.'),
  };
}

function fixedIn(condition: Condition, words: string): readonly [string, string][] {
  switch (condition.kind) {
    case 'all':
      return condition.of.flatMap((part) => fixedIn(part, words));
    case 'bare':
      return [[condition.attribute.text, 'yes']];
    case 'not':
      if (condition.of.kind === 'bare') return [[condition.of.attribute.text, 'no']];
      break;
    case 'test': {
      const [value, ...others] = condition.values;
      if (!condition.negated && others.length === 0)
        return [[condition.attribute.text, value.text]];
    }
  }
  throw new CannotRun(
    `--for “${words}” leaves open which machine a sheet is for.`,
    'Fix one value of each thing that matters: `--for "feed = hydraulic & engine = diesel"`.',
  );
}

/** What may stand in the name of a file. */
const plain = (text: string): string => text.replace(/[^\p{L}\p{N}.]+/gu, '-');

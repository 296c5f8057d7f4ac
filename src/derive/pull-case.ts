import {
  type Condition,
  type MachineCondition,
  machineCondition,
  printCondition,
  type VariantSet,
} from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import { conditionWords, joinedWords } from './condition-words.ts';

/** When something is needed, where not always. */
export interface PullCase {
  /** In the manual's own language; undefined where it would take hundreds of words. */
  readonly condition: string | undefined;
  /** "for winch, if the rope is cut" */
  readonly words: string;
  /** The machines for which it can be; undefined for all. */
  readonly machines: MachineCondition | undefined;
}

/** When a line of a list for `machines` holds; undefined for always. */
export function pullCase(
  set: VariantSet,
  machines: VariantSet,
  { space, settings }: ManualModel,
): PullCase | undefined {
  const condition = space.describe(set, machines);
  if (condition === undefined) return undefined;
  if (condition === 'too-long')
    return { condition: undefined, words: 'for some machines or findings', machines: undefined };
  return {
    condition: printCondition(condition),
    words: caseWords(condition, settings.variants),
    machines: machineCondition(condition, space),
  };
}

/** Machines first, then what the technician finds, in the words in which the sheet asks for it. */
function caseWords(condition: Condition, variants: ManualModel['settings']['variants']): string {
  if (condition.kind === 'any') {
    const ways = condition.of.map((part) => caseWords(part, variants));
    const isPlain = condition.of.every(({ kind }) => kind === 'found');
    return isPlain
      ? `if ${ways.map((way) => way.slice('if '.length)).join(' or ')}`
      : ways.join(', or ');
  }
  const parts = condition.kind === 'all' ? condition.of : [condition];
  const found = parts.filter(isFound);
  const others = parts.filter((part) => !isFound(part));
  const machines = joinedWords(others, variants);
  const findings = found.map((part) =>
    part.kind === 'found' ? part.label : conditionWords(part, variants),
  );
  return [
    ...(machines === '' ? [] : [`for ${machines}`]),
    ...(findings.length === 0 ? [] : [`if ${findings.join(' and ')}`]),
  ].join(', ');
}

/** Whether a condition speaks only of what the technician finds. */
function isFound(condition: Condition): boolean {
  if (condition.kind === 'not') return isFound(condition.of);
  if (condition.kind === 'any' || condition.kind === 'all') return condition.of.every(isFound);
  return condition.kind === 'found';
}

import type { Direction } from '../../schemas/redline.ts';
import { type Condition, printCondition, resolveCondition } from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import type { Shift } from './fact.ts';

/** Compares conditions of the two manuals by the machines that they mean. */
export class ConditionComparer {
  readonly #space: ManualModel['space'] | undefined;

  /** Machines can be told apart only where both manuals have the same ones. */
  constructor(before: ManualModel, after: ManualModel) {
    const machines = ({ settings: { variants, never } }: ManualModel): string =>
      JSON.stringify([valuesOf(variants), never]);
    this.#space = machines(before) === machines(after) ? after.space : undefined;
  }

  /** How the machines for which something holds have changed; `undefined` where they are the same. */
  shift(before: readonly Condition[], after: readonly Condition[]): Shift | undefined {
    const [a, b] = [textOf(before), textOf(after)];
    if (a === b) return undefined;
    const [one, two] = [this.#setOf(before), this.#setOf(after)];
    const told: Shift = {
      kind: 'machines',
      before: a ?? 'all machines',
      after: b ?? 'all machines',
    };
    if (this.#space === undefined || one === undefined || two === undefined) {
      if (a === undefined) return { ...told, direction: 'narrower' };
      return b === undefined ? { ...told, direction: 'wider' } : told;
    }
    if (this.#space.equals(one, two)) return undefined;
    const direction: Direction | undefined = this.#space.covers(one, two)
      ? 'narrower'
      : this.#space.covers(two, one)
        ? 'wider'
        : undefined;
    return direction === undefined ? told : { ...told, direction };
  }

  #setOf(conditions: readonly Condition[]) {
    const space = this.#space;
    if (space === undefined) return undefined;
    let set = space.all;
    for (const condition of conditions) {
      const { value, problems } = resolveCondition(space, condition);
      if (problems.some(({ code }) => code !== 'never-true' && code !== 'always-true'))
        return undefined;
      set = space.and(set, value);
    }
    return set;
  }
}

/** Conditions that must all hold, as the manual's language writes them; undefined for none. */
export function textOf(conditions: readonly Condition[]): string | undefined {
  const [first, second, ...rest] = conditions;
  if (first === undefined) return undefined;
  if (second === undefined) return printCondition(first);
  return printCondition({ kind: 'all', of: [first, second, ...rest], start: 0, end: 0 });
}

type Variants = ManualModel['settings']['variants'];

const valuesOf = (variants: Variants): readonly unknown[] =>
  Object.keys(variants)
    .sort()
    .map((id) => {
      const variant = variants[id];
      return [id, Array.isArray(variant) ? variant : variant?.values];
    });

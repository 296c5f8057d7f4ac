import { printCondition, type Space, type VariantSet } from '../applicability/index.ts';

/** Variants of a scope in words, or one of them where that takes too many; undefined where it is all of them. */
export function whenOf(space: Space, set: VariantSet, scope: VariantSet): string | undefined {
  const condition = space.describe(set, scope);
  if (condition === undefined) return undefined;
  if (condition !== 'too-long') return printCondition(condition);
  const machine = space.pick(set) ?? new Map<string, string>();
  return `such as ${[...machine].map(([id, value]) => `${id} = ${value}`).join(' & ')}`;
}

import type { VariantSet } from '../applicability/index.ts';
import type { ManualModel } from '../catalogue/index.ts';
import { conditionWords } from './condition-words.ts';

/**
 * Which of the machines in `within` are meant, in the manual's names: "feed = hydraulic and winch";
 * undefined for all of them. A set that takes too many words is told by one machine in it.
 */
export function machineWords(
  set: VariantSet,
  within: VariantSet,
  { space, settings }: ManualModel,
): string | undefined {
  const condition = space.describe(set, within);
  if (condition === undefined) return undefined;
  if (condition !== 'too-long') return conditionWords(condition, settings.variants);
  const machine = space.pick(space.and(set, within)) ?? new Map<string, string>();
  const attributes = new Set(space.support(set));
  const named = [...machine].filter(([id]) => attributes.has(id));
  return `machines such as ${named.map(([id, value]) => `${id} = ${value}`).join(' and ')}`;
}

import type { Element } from 'hast';
import { h } from 'hastscript';
import { type Condition, machineCondition } from '../applicability/index.ts';
import { onlyWords } from '../derive/index.ts';
import type { ManualContext } from './sheet-context.ts';
import { saidUnless } from './shown-when.ts';

/** "Only for feed = hydraulic:", before a part of a sheet that does not hold for every machine. */
export function onlyFor(
  when: { readonly condition: Condition } | undefined,
  context: ManualContext,
): Element[] {
  if (when === undefined) return [];
  const { settings, space } = context.manual.manual;
  const unless = saidUnless(machineCondition(when.condition, space));
  return [h('p.only', unless, `${onlyWords(when.condition, settings.variants)}:`)];
}

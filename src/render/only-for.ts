import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Condition } from '../applicability/index.ts';
import { onlyWords } from '../derive/index.ts';
import type { ManualContext } from './sheet-context.ts';

/** "Only for feed = hydraulic:", before a part of a sheet that does not hold for every machine. */
export function onlyFor(
  when: { readonly condition: Condition } | undefined,
  context: ManualContext,
): Element[] {
  if (when === undefined) return [];
  return [h('p.only', `${onlyWords(when.condition, context.manual.manual.settings.variants)}:`)];
}

import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Ref } from '../syntax/index.ts';
import type { SheetContext } from './sheet-context.ts';
import { stepAnchor } from './site-links.ts';

/** "Only after step 7", with a link to each step that must be done first. */
export function neededSteps(refs: readonly Ref[], context: SheetContext): Element[] {
  if (refs.length === 0) return [];
  const links = refs.flatMap((ref, i) => {
    const number = context.numbers.byId(ref.id);
    const link =
      number === undefined
        ? `“${ref.id}”`
        : h('a', { href: `#${stepAnchor(number)}` }, `step\u00a0${number}`);
    return i === 0 ? [link] : [i === refs.length - 1 ? ' and ' : ', ', link];
  });
  return [h('p.needs', ['Only after ', ...links])];
}

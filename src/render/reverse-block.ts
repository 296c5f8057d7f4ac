import type { Element } from 'hast';
import { h } from 'hastscript';
import { itemName } from '../derive/index.ts';
import type { Reverse } from '../syntax/index.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { shownWhen } from './shown-when.ts';

/** A reassembly whose steps are not written out in the text: which section it undoes, and what stays out. */
export function reverseBlock(block: Reverse, context: SheetContext): Element {
  const section = context.one.section(block.of);
  const title = section?.title ?? block.of.id;
  const except = block.except.map((ref) => {
    const item = context.one.item(ref);
    return item === undefined ? ref.id : itemName(item);
  });
  return h('div.reference', shownWhen(context.presence.when(block.when)), [
    ...onlyFor(block.when, context),
    h('p', [
      'Undo each step of ',
      section === undefined ? title : h('a', { href: `#${context.phaseId(section)}` }, title),
      ', the last one first',
      ...(except.length === 0 ? [] : [`, all but ${except.join(', ')}`]),
      '.',
    ]),
  ]);
}

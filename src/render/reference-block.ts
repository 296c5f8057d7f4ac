import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { itemName, stateWords } from '../derive/index.ts';
import type { Perform } from '../syntax/index.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { phaseAnchor, procedureHref } from './site-links.ts';

/** A job of another sheet: its name and number, how long it is, that the work goes on here after it, and what it leaves changed. */
export function referenceBlock(block: Perform, context: SheetContext): Element {
  const target = context.manual.procedures.get(block.procedure.id);
  if (target === undefined) {
    return h('div.reference', h('p', `Do “${block.procedure.id}” (not in this manual).`));
  }
  const { front } = target.procedure;
  const section = block.part && target.section(block.part);
  const anchor = section === undefined ? '' : `#${phaseAnchor(section.id)}`;
  const href = `${context.base}${procedureHref(target.procedure.id)}${anchor}`;
  const total = context.numbersOf(target).total(section);
  const words: (Element | string)[] = [
    ...(section === undefined ? [] : [`“${section.title ?? section.id}” of `]),
    h('a', { href }, front.title),
  ];
  return h('div.reference', [
    ...onlyFor(block.when, context),
    h('p', [
      'Do ',
      ...words,
      ` (${context.documentNumber(target)}), ${total}\u00a0${total === 1 ? 'step' : 'steps'}, then come back here.`,
    ]),
    ...(section === undefined ? leftChanged(target, front.leaves) : []),
  ]);
}

function leftChanged(...[target, leaves]: Parameters<typeof stateWords>): ElementContent[] {
  const states = stateWords(target, leaves).map(({ item, id, state }) => {
    const name = item === undefined ? id : itemName(item, 'count' in item ? item.count : 1);
    return `${name}: ${state}`;
  });
  return states.length === 0 ? [] : [h('p.leaves', `It leaves ${states.join('; ')}.`)];
}

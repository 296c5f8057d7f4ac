import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { idWords, itemName, Presence, stateWords } from '../derive/index.ts';
import { sectionsFrom } from '../link/index.ts';
import type { Perform } from '../syntax/index.ts';
import { jobWords } from './job-words.ts';
import { onlyFor } from './only-for.ts';
import type { SheetContext } from './sheet-context.ts';
import { saidCount, shownWhen } from './shown-when.ts';

/** A job of another sheet: its name and number, how long it is, that the work goes on here after it, and what it leaves changed. */
export function referenceBlock(block: Perform, context: SheetContext): Element {
  const target = context.manual.procedures.get(block.procedure.id);
  if (target === undefined) {
    return h('div.reference', h('p', `Do “${block.procedure.id}” (not in this manual).`));
  }
  const { front } = target.procedure;
  const section = block.part && target.section(block.part);
  const total = context.numbersOf(target).total(section);
  const sections =
    section === undefined ? target.procedure.sections : sectionsFrom(target, section);
  const ranks = new Presence(context.manual.manual.space, target).firstRank(sections);
  return h('div.reference', shownWhen(context.presence.when(block.when)), [
    ...onlyFor(block.when, context),
    h('p', [
      'Do ',
      ...jobWords(block, target, context),
      ', ',
      h('span', saidCount(ranks), `${total}\u00a0${total === 1 ? 'step' : 'steps'}`),
      `, ${block.each === undefined ? '' : `for ${idWords(block.each.id)}, `}then come back here.`,
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

import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Ref } from '../syntax/index.ts';
import type { SheetContext } from './sheet-context.ts';
import { procedureHref, stepAnchor } from './site-links.ts';

/** "Only after step 7", with a link to each step that must be done first. */
export function neededSteps(refs: readonly Ref[], context: SheetContext): Element[] {
  if (refs.length === 0) return [];
  const links = refs.map((ref) => {
    const number = context.numbers.byId(ref.id);
    if (number === undefined) return stepElsewhere(ref, context);
    const named = ['step\u00a0', h('span', { dataNumber: number }, number)];
    return h('a', { href: `#${stepAnchor(number)}` }, named);
  });
  return [h('p.needs', ['Only after ', h('span', { dataListed: true }, listed(links))])];
}

/** "step 3, step 5 and step 7" */
const listed = (links: readonly Element[]): ElementContent[] =>
  links.flatMap((link, i) =>
    i === 0 ? [link] : [{ type: 'text', value: i === links.length - 1 ? ' and ' : ', ' }, link],
  );

/** A step of a part of the job that is not printed on this sheet. */
function stepElsewhere({ id }: Ref, context: SheetContext): Element {
  const own = context.manual.procedures.get(context.one.procedure.id);
  const number = own && context.numbersOf(own).byId(id);
  if (own === undefined || number === undefined) return h('span', `“${id}”`);
  const href = `${context.base}${procedureHref(own.procedure.id)}#${stepAnchor(number)}`;
  return h('a', { href }, `step\u00a0${number} of ${context.documentNumber(own)}`);
}

import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { LinkedProcedure } from '../link/index.ts';
import type { Perform } from '../syntax/index.ts';
import type { SheetContext } from './sheet-context.ts';
import { phaseAnchor, procedureHref } from './site-links.ts';

/** "“Removal” of Replace the anvil (WM-26D-304)", with a link to its own sheet. */
export function jobWords(
  { part }: Perform,
  target: LinkedProcedure,
  context: SheetContext,
): ElementContent[] {
  const { id, front } = target.procedure;
  const section = part && target.section(part);
  const anchor = section === undefined ? '' : `#${phaseAnchor(section.id)}`;
  const href = `${context.base}${procedureHref(id)}${anchor}`;
  const of = section === undefined ? '' : `“${section.title ?? section.id}” of `;
  return [
    ...(of === '' ? [] : [text(of)]),
    h('a', { href }, front.title),
    text(` (${context.documentNumber(target)})`),
  ];
}

const text = (value: string): ElementContent => ({ type: 'text', value });

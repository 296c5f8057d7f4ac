import { targetOf } from '../link/index.ts';
import type { SheetContext } from './sheet-context.ts';
import { figureHref, phaseAnchor, procedureHref, stepAnchor } from './site-links.ts';

/**
 * The address of a link that the writer made, seen from the sheet: other hosts by http, https, mailto or
 * tel, and procedures of the manual. Undefined for all else, which is then printed without a link.
 */
export function linkAddress(url: string, context: SheetContext): string | undefined {
  const target = targetOf(context.one.procedure.file, url);
  if (target.kind === 'elsewhere') return url;
  if (target.kind === 'outside') return undefined;
  const found = context.procedureInFile(target.path);
  if (found === undefined) return undefined;
  const isHere = found === context.one;
  const page = isHere ? '' : context.base + procedureHref(found.procedure.id);
  if (target.anchor === undefined) return isHere ? '#' : page;
  const number = context.numbersOf(found).byId(target.anchor);
  if (number !== undefined) return `${page}#${stepAnchor(number)}`;
  const section = found.procedure.sections.find(({ id }) => id === target.anchor);
  return section === undefined ? page || '#' : `${page}#${phaseAnchor(section.id)}`;
}

/** The address of a picture of the manual, seen from the sheet; undefined for one from elsewhere. */
export function pictureAddress(src: string, context: SheetContext): string | undefined {
  const target = targetOf(context.one.procedure.file, src);
  return target.kind === 'file' ? context.base + figureHref(target.path) : undefined;
}

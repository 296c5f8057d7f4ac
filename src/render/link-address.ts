import { type LinkedProcedure, targetOf } from '../link/index.ts';
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
  const isHere = found.procedure.id === context.one.procedure.id;
  return (
    (isHere ? hereAddress(target.anchor, context) : undefined) ??
    pageOf(found, target.anchor, context)
  );
}

/** The place in the same text; undefined where that is not printed on the sheet. */
function hereAddress(anchor: string | undefined, context: SheetContext): string | undefined {
  const { job, numbers, sections, titleId } = context;
  const top = job === undefined ? '#' : `#${titleId}`;
  if (anchor === undefined) return top;
  const number = numbers.byId(anchor);
  if (number !== undefined) return `#${stepAnchor(number)}`;
  const section = sections.find(({ id }) => id === anchor);
  if (section !== undefined) return `#${context.phaseId(section)}`;
  return job === undefined ? top : undefined;
}

function pageOf(found: LinkedProcedure, anchor: string | undefined, context: SheetContext): string {
  const { id, sections } = found.procedure;
  const page = context.base + procedureHref(id);
  if (anchor === undefined) return page;
  const number = context.numbersOf(found).byId(anchor);
  if (number !== undefined) return `${page}#${stepAnchor(number)}`;
  const isSection = sections.some((section) => section.id === anchor);
  return isSection ? `${page}#${phaseAnchor(anchor)}` : page;
}

/** The address of a picture of the manual, seen from the sheet; undefined for one from elsewhere. */
export function pictureAddress(src: string, context: SheetContext): string | undefined {
  const target = targetOf(context.one.procedure.file, src);
  return target.kind === 'file' ? context.base + figureHref(target.path) : undefined;
}

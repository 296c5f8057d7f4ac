import type { Item } from '../catalogue/index.ts';
import { itemName, type Owner } from '../derive/index.ts';
import type { LinkedProcedure } from '../link/index.ts';
import type { PageLink } from './book.ts';

/** Addresses of the site's pages, relative to its root. They name the file, so that the folder opens without a server. */
export const torqueChartHref = 'torque-chart/index.html';
export const fluidsHref = 'fluids/index.html';
export const hazardsHref = 'hazards/index.html';

export function procedureHref(id: string): string {
  return `procedures/${id}/index.html`;
}

/** The pull list of a procedure as a file beside its sheet. */
export function pullListHref(id: string, format: 'csv' | 'json'): string {
  return `procedures/${id}/pull-list.${format}`;
}

/** A procedure for programs, as a file beside its sheet. */
export function procedureDataHref(id: string): string {
  return `procedures/${id}/procedure.json`;
}

export function machineHref(id: string): string {
  return `machines/${id}/index.html`;
}

/** The entry on its machine's page; an entry that a procedure brings along has none but that procedure's sheet. */
export function itemHref(item: Item, owner: Owner): string {
  if (owner.kind === 'procedure') return procedureHref(owner.id);
  return `${machineHref(owner.id)}#${item.id}`;
}

/** Id of the row of an item in the torque chart and the table of fluids. */
export function rowAnchor(item: Item, owner: Owner): string {
  return `${owner.id}-${item.id}`;
}

export function procedureLink(one: LinkedProcedure): PageLink {
  return { href: procedureHref(one.procedure.id), text: one.procedure.front.title };
}

export function itemLink(item: Item, owner: Owner, text = itemName(item)): PageLink {
  return { href: itemHref(item, owner), text };
}

/**
 * Where a picture of the manual lies on the site, from its path in the manual. Two pictures never share a
 * place: those outside `figures/` keep their whole path, in a folder of their own.
 */
export function figurePath(path: string): string {
  return path.startsWith('figures/') ? path : `pictures/${path}`;
}

/** The address of a picture of the manual; each part of the path is escaped. */
export function figureHref(path: string): string {
  return figurePath(path).split('/').map(encodeURIComponent).join('/');
}

export const phaseAnchor = (section: string): string => `phase-${section}`;
export const stepAnchor = (number: string): string => `step-${number}`;

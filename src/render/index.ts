export type * from './book.ts';
export { makeBook } from './make-book.ts';
export { figureHref, itemHref, machineHref, procedureHref } from './site-links.ts';

export { type XmlElement, type XmlNode, xml, xmlDocument } from '../report/index.ts';
export type * from './book.ts';
export { figureMarkup } from './figure.ts';
export { avoidance } from './hazard-panel.ts';
export { makeBook } from './make-book.ts';
export { manualContext } from './manual-context.ts';
export { margin, wayBoxes } from './margin.ts';
export { neededSteps } from './needed-steps.ts';
export { onlyFor } from './only-for.ts';
export { type OpenBook, openBook } from './open-book.ts';
export { prose } from './prose.ts';
export { pullCsv, pullJson } from './pull-csv.ts';
export { pullData } from './pull-data.ts';
export { pullText } from './pull-text.ts';
export { referenceBlock } from './reference-block.ts';
export { reverseBlock } from './reverse-block.ts';
export { searchDocuments } from './search-documents.ts';
export { searchIndex } from './search-index.ts';
export type { SearchDocument } from './search-options.ts';
export { sheetContext } from './sheet-body.ts';
export type { ManualContext, SheetContext } from './sheet-context.ts';
export { sheetMarkup } from './sheet-markup.ts';
export {
  figureHref,
  itemHref,
  machineHref,
  phaseAnchor,
  procedureHref,
  stepAnchor,
} from './site-links.ts';
export { type SitemapFile, sitemap } from './sitemap.ts';
export { standingMarkup } from './standing-text.ts';

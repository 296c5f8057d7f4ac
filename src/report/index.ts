export { applyEdits } from './apply-edits.ts';
export * from './baseline/index.ts';
export * from './divided/index.ts';
export { Examination, type Material, type Parsed } from './examination.ts';
export { fails } from './fails.ts';
export { type Inspection, type InspectOptions, inspect } from './inspect.ts';
export { reportAsJunit } from './junit/index.ts';
export { KeptInspection } from './kept/kept-inspection.ts';
export type { Digest } from './kept/look-keys.ts';
export { withLineEndsOf } from './line-ends.ts';
export { makeReport } from './make-report.ts';
export {
  folded,
  listed,
  listItem,
  markdownSentence,
  markdownWords,
  reportAsMarkdown,
} from './markdown/index.ts';
export { noPaint, type Paint } from './paint.ts';
export { printable } from './printable.ts';
export { type DescribedRule, reportAsSarif, type SarifContext } from './sarif/index.ts';
export { type Selection, selectFindings } from './select-findings.ts';
export { partsOf, Share, type Whole } from './share.ts';
export { sortedFiles } from './sorted-files.ts';
export { inspectStored, type StoredInspection } from './stored/inspect-stored.ts';
export { emptyStore, type Store } from './stored/store.ts';
export type { Known } from './stored/workforce.ts';
export {
  type Looked,
  OwnWorker,
  type WholeKnown,
  type Worker,
} from './stored/workforce.ts';
export { type Subject, subjectsOf } from './subjects.ts';
export { counted, summaryAsText } from './summary.ts';
export { reportAsText } from './text.ts';
export { wrap } from './wrap.ts';
export { type XmlElement, type XmlNode, xml, xmlDocument } from './xml.ts';

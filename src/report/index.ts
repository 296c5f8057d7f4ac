export { applyEdits } from './apply-edits.ts';
export { type Inspection, type InspectOptions, inspect } from './inspect.ts';
export { makeReport } from './make-report.ts';
export { noPaint, type Paint } from './paint.ts';
export { printable } from './printable.ts';
export { reportAsText, summaryAsText } from './text.ts';

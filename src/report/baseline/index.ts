export { againstBaseline } from './against-baseline.ts';
export { baselineAsText } from './baseline-as-text.ts';
export { baselineOf } from './baseline-of.ts';
export { printOf } from './print-of.ts';
export { type ReadBaseline, readBaseline } from './read-baseline.ts';
export { tightened } from './tightened.ts';

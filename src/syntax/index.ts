export type * from './facts.ts';
export { parseBlocksAt, parseMarkdownFragment } from './fragment.ts';
export { isLifting } from './lifting.ts';
export type * from './model.ts';
export { type Front, parseFront } from './parse-front.ts';
export { parseProcedure } from './parse-procedure.ts';
export type { ReadingFact } from './reading.ts';
export { slugOf } from './slug.ts';

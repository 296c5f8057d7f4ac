export { Completer, type Completion } from './complete.ts';
export { expandReverses } from './expand-reverses.ts';
export type { ReverseFact } from './facts.ts';

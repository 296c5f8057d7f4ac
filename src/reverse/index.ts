export { Completer, type Completion } from './complete.ts';
export { Expansion, expandReverses, type WrittenOut } from './expand-reverses.ts';
export type { ReverseFact } from './facts.ts';

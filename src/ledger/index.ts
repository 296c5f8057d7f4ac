export type { LedgerFact, Spread, Trace } from './facts.ts';
export { keepLedger } from './keep-ledger.ts';
export { itemStates, statesOf, verbsFor } from './kinds.ts';

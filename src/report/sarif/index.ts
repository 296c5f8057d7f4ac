export { reportAsSarif, type SarifContext } from './report-as-sarif.ts';
export type { DescribedRule } from './rule-descriptors.ts';

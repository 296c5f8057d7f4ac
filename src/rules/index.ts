export { type Found, findAll } from './find-all.ts';
export { makeExamined } from './make-examined.ts';
export { type Example, type ExampleFile, type Mark, readExample } from './read-example.ts';
export { type RulePage, readPage } from './read-page.ts';
export type { Draft, Examined, Fact, Family, Rule } from './rule.ts';
export { rules } from './rules.ts';
export { runRules } from './run-rules.ts';

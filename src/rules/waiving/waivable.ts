import { unchangeable } from '../unchangeable.ts';

/** Files beyond reading, and what is said of waivers themselves: nothing may hide these. */
const never: ReadonlySet<string> = new Set([
  ...unchangeable,
  'too-deep',
  'too-large',
  'waiver-expired',
  'waiver-reason',
  'waiver-unknown-rule',
  'waiver-unused',
]);

/** Those of some rules whose findings a waiver may let pass. */
export const waivable = (ids: readonly string[]): readonly string[] =>
  ids.filter((id) => !never.has(id));

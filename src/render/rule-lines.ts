import { rules } from '../rules/index.ts';
import type { RuleLine } from './book.ts';

/** Every rule, in the order of `explain`. */
export const ruleLines: readonly RuleLine[] = rules.map(({ id, family, level }) => ({
  id,
  family,
  level,
}));

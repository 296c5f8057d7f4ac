import type { Finding } from '../../schemas/finding.ts';
import type { Waived } from '../../schemas/report.ts';
import { factsAmong } from './make-examined.ts';
import type { Examined } from './rule.ts';
import { rules } from './rules.ts';
import { inOrder, runRules } from './run-rules.ts';
import { settleWaivers } from './waiving/settle-waivers.ts';
import { waivable } from './waiving/waivable.ts';

export interface Found {
  readonly findings: readonly Finding[];
  readonly waivers: readonly Waived[];
}

/**
 * What all rules find, less what the manual's waivers let pass, and what is wrong with the waivers. `today` is
 * YYYY-MM-DD; without it no waiver expires.
 */
export function findAll(examined: Examined, today: string | undefined): Found {
  const levels = examined.linked.manual.settings.rules;
  const found = runRules(rules, examined, levels);
  const settled = settleWaivers(found, examined.linked, waivable(examined.ruleIds), today);
  const onWaivers = { ...examined, facts: factsAmong(settled.facts) };
  const ofWaivers = rules.filter(({ id }) => id.startsWith('waiver-'));
  const more = runRules(ofWaivers, onWaivers, levels);
  return { findings: inOrder([...settled.findings, ...more]), waivers: settled.waivers };
}

import type { ConfigurationOverride, ReportingDescriptor } from 'sarif';
import type { ManualSettings } from '../../../schemas/manual.ts';
import { type Rule, type RulePage, readPage } from '../../rules/index.ts';
import { sarifText } from './message-of.ts';

/** A rule with the Markdown of its page. */
export interface DescribedRule extends Pick<Rule, 'id' | 'family' | 'level'> {
  readonly page: string;
}

/** A rule as SARIF describes it (3.49). */
export function descriptorOf({ id, family, level, page }: DescribedRule): ReportingDescriptor {
  const read: RulePage = readPage(page);
  return {
    id,
    shortDescription: { text: sarifText(read.what) },
    fullDescription: { text: sarifText(`${read.what} ${read.why}`) },
    help: { text: sarifText(read.action) },
    defaultConfiguration: { level },
    properties: { tags: [family] },
  };
}

/** The levels that the manual gives to rules in place of their own (3.51). */
export function overridesIn(
  levels: ManualSettings['rules'],
  rules: readonly DescribedRule[],
): ConfigurationOverride[] {
  return rules.flatMap(({ id }, index): ConfigurationOverride[] => {
    const level = Object.hasOwn(levels, id) ? levels[id] : undefined;
    if (level === undefined) return [];
    const configuration = level === 'off' ? { enabled: false } : { level };
    return [{ descriptor: { id, index }, configuration }];
  });
}

import type { RuleLine } from '../src/render/book.ts';
import { type RulePage, readPage } from '../src/rules/read-page.ts';

/** What the rules of each family are about. */
export const families = {
  form: 'How files, front matter, directives and waivers are written',
  links: 'What refers to something: items, procedures, sections, steps, figures',
  balance: 'What is taken out, opened, drained or fitted and must be undone',
  order: 'What must come before what',
  values: 'Torques, volumes, limits, units and patterns',
  safety: 'Hazards, energy, heavy parts',
  words: 'Sentences that act, count or order',
} as const satisfies Record<RuleLine['family'], string>;

export interface ReferenceRule extends RuleLine {
  readonly page: RulePage;
}

const texts = import.meta.glob<string>('../src/rules/*/*.md', {
  query: '?raw',
  import: 'default',
  eager: true,
});

/** A rule with its page, the same that `tallybolt explain` prints. */
export function referenceRule(rule: RuleLine): ReferenceRule {
  const text = texts[`../src/rules/${rule.family}/${rule.id}.md`];
  if (text === undefined) throw new Error(`The rule ${rule.id} has no page.`);
  return { ...rule, page: readPage(text) };
}

/** Where the rule stands on the site. */
export const ruleHref = ({ family, id }: RuleLine): string => `rules/${family}/index.html#${id}`;

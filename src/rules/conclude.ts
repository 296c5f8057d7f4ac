import type { Finding } from '../../schemas/finding.ts';
import type { ManualSettings } from '../../schemas/manual.ts';
import type { Waived } from '../../schemas/report.ts';
import { comparePlaces, compareText } from '../source/index.ts';
import { rule as waiverExpired } from './form/waiver-expired.ts';
import { rule as waiverUnused } from './form/waiver-unused.ts';
import type { Found, Look } from './look.ts';
import { foundBy } from './look-at.ts';
import { factsAmong } from './make-examined.ts';
import type { LateRule } from './rule.ts';
import { rules } from './rules.ts';
import { related, without } from './telling/related.ts';
import { settleWaivers } from './waiving/settle-waivers.ts';

export interface Conclusion {
  /** By place, then rule, then message; each once. */
  readonly findings: readonly Finding[];
  readonly waivers: readonly Waived[];
}

export interface Whole {
  readonly levels: ManualSettings['rules'];
  /** Of a procedure, by its id. */
  readonly titleOf: (procedure: string) => string;
  /** YYYY-MM-DD; without it no waiver expires. */
  readonly today: string | undefined;
}

/** What may only be said when all parts have been looked at. */
const lateRules: readonly LateRule[] = [waiverExpired, waiverUnused];

/** One answer of the looks at all parts of a manual, in any order: what stands of it, less what its waivers let pass. */
export function conclude(looks: readonly Look[], { levels, titleOf, today }: Whole): Conclusion {
  const settled = new Set<string>();
  for (const look of looks) for (const key of look.settled) settled.add(key);
  const standing = looks.flatMap(({ found }) =>
    found.filter(
      ({ unless = [], onlyIf }) =>
        !unless.some((key) => settled.has(key)) && (onlyIf === undefined || settled.has(onlyIf)),
    ),
  );
  const all = distinct(withPerformers(standing, looks, titleOf).toSorted(compare));
  const waivers = looks.flatMap((look) => look.waivers);
  const { findings, waived, facts } = settleWaivers(all, waivers, today);
  const told = { ruleIds: rules.map(({ id }) => id), facts: factsAmong(facts) };
  const late = foundBy(lateRules, told, levels, new Map());
  return {
    findings: distinct([...findings, ...late.map(({ finding }) => finding)].toSorted(compare)),
    waivers: waived,
  };
}

/** A finding names the procedures that perform its text and for which the same holds. */
function withPerformers(
  found: readonly Found[],
  looks: readonly Look[],
  titleOf: (procedure: string) => string,
): Finding[] {
  const performing = looks.flatMap((look) => look.performing);
  const byFact = Map.groupBy(
    performing.toSorted((a, b) => compareText(a.by.procedure, b.by.procedure)),
    ({ key }) => key,
  );
  return found.map(({ finding, fact }) => {
    const performers = fact === undefined ? undefined : byFact.get(fact);
    if (performers === undefined) return finding;
    const callers = performers.map(({ by: { procedure, place, when } }) => {
      const condition = when === undefined ? '' : ` (${when})`;
      return related(place, `“${titleOf(procedure)}” performs this here${condition}`);
    });
    return { ...finding, related: without(finding, [...finding.related, ...callers]) };
  });
}

function compare(a: Finding, b: Finding): number {
  return (
    comparePlaces(a, b) ||
    compareText(a.rule, b.rule) ||
    compareText(a.message, b.message) ||
    compareText(JSON.stringify(a), JSON.stringify(b))
  );
}

/** Sorted findings, each once. */
function distinct(findings: readonly Finding[]): Finding[] {
  return findings.filter((one, i) => {
    const before = findings[i - 1];
    return before === undefined || compare(before, one) !== 0;
  });
}

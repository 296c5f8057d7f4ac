import type { Finding, Level, Related } from '../../schemas/finding.ts';
import type { ManualSettings } from '../../schemas/manual.ts';
import { comparePlaces, compareText, placeOf } from '../source/index.ts';
import type { Draft, Examined, Rule } from './rule.ts';
import { unchangeable } from './unchangeable.ts';

/** Runs rules over a manual. `levels` changes the level of a rule or turns it off. Sorted by place, rule and message. */
export function runRules(
  rules: readonly Rule[],
  examined: Examined,
  levels: ManualSettings['rules'],
): Finding[] {
  const procedures = new Map(
    [...examined.linked.procedures].map(([id, one]) => [one.procedure.file, id]),
  );
  const findings = rules.flatMap((rule) => {
    const level = levelOf(rule, levels);
    if (level === undefined) return [];
    return [...rule.check(examined)].map((draft) =>
      finding(rule, level, draft, draft.procedure ?? procedures.get(draft.place.file)),
    );
  });
  return distinct(inOrder(findings));
}

/** Findings by place, then rule, then message. */
export function inOrder(findings: readonly Finding[]): Finding[] {
  return findings.toSorted(compare);
}

function levelOf(rule: Rule, levels: ManualSettings['rules']): Level | undefined {
  const chosen =
    unchangeable.has(rule.id) || !Object.hasOwn(levels, rule.id) ? undefined : levels[rule.id];
  if (chosen === 'off') return undefined;
  return chosen ?? rule.level;
}

/** Plain JSON: what a draft leaves undefined is not there at all. */
function finding(rule: Rule, level: Level, draft: Draft, procedure: string | undefined): Finding {
  const { item, when, help, fix } = draft;
  return {
    rule: rule.id,
    level,
    message: draft.message,
    ...placeOf(draft.place),
    ...(procedure !== undefined && { procedure }),
    ...(item !== undefined && { item }),
    ...(when !== undefined && { when }),
    data: { ...draft.data },
    related: (draft.related ?? []).map((one): Related => ({ ...placeOf(one), label: one.label })),
    ...(help !== undefined && { help }),
    ...(fix !== undefined && { fix }),
  };
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
    return before === undefined || JSON.stringify(before) !== JSON.stringify(one);
  });
}

import type { Finding } from '../../../schemas/finding.ts';
import { isFailure } from '../fails.ts';

/** A test case: all findings of one rule in one subject that end alike. */
export type Case = { readonly name: string } & (
  | { readonly ends: 'passed'; readonly notes: readonly Finding[] }
  | {
      readonly ends: 'failed';
      readonly rule: string;
      readonly findings: readonly [Finding, ...Finding[]];
    }
  | { readonly ends: 'skipped'; readonly why: string; readonly findings: readonly Finding[] }
);

/** What was found in one subject. */
export interface FoundIn {
  readonly findings: readonly Finding[];
  readonly waived: readonly { readonly finding: Finding; readonly reason: string }[];
}

/**
 * The cases of a subject: one for each rule that failed, was waived, is known to the baseline, or noted something. Where
 * nothing failed a case of the name `sound` says so.
 */
export function casesOf({ findings, waived }: FoundIn, sound: string): Case[] {
  const failed = byRule(findings.filter(isFailure)).flatMap(([rule, [first, ...others]]): Case[] =>
    first === undefined ? [] : [{ name: rule, ends: 'failed', rule, findings: [first, ...others] }],
  );
  const known = byRule(findings.filter((one) => one.known === true)).map(([rule, ofRule]): Case => {
    const why = 'Known: listed in the baseline.';
    return { name: `${rule} (known)`, ends: 'skipped', why, findings: ofRule };
  });
  const reasons = Map.groupBy(waived, ({ finding, reason }) =>
    JSON.stringify([finding.rule, reason]),
  );
  const passed = [...reasons.values()].flatMap((alike, i): Case[] => {
    const [first] = alike;
    if (first === undefined) return [];
    const { finding, reason } = first;
    const before = [...reasons.values()].slice(0, i);
    const ordinal = before.filter(([one]) => one?.finding.rule === finding.rule).length + 1;
    const name = `${finding.rule} (waived${ordinal > 1 ? ` ${ordinal}` : ''})`;
    const why = `Waived: ${reason === '' ? 'no reason is given' : reason}`;
    return [{ name, ends: 'skipped', why, findings: alike.map((one) => one.finding) }];
  });
  const isNote = (one: Finding): boolean => one.level === 'note' && one.known !== true;
  const noted = byRule(findings.filter(isNote)).map(([rule, notes]): Case => {
    return { name: `${rule} (note)`, ends: 'passed', notes };
  });
  const whole: Case[] = failed.length === 0 ? [{ name: sound, ends: 'passed', notes: [] }] : [];
  return [...whole, ...failed, ...noted, ...known, ...passed];
}

const byRule = (findings: readonly Finding[]): [string, Finding[]][] => [
  ...Map.groupBy(findings, ({ rule }) => rule),
];

import type { Finding } from '../../../schemas/finding.ts';
import type { Waived } from '../../../schemas/report.ts';
import { comparePlaces, placeOf } from '../../source/index.ts';
import type { WaiverFact } from './facts.ts';
import type { Standing } from './standing.ts';

export interface Settled {
  /** Those that no waiver lets pass. */
  readonly findings: readonly Finding[];
  /** All waivers of the manual, each with what it lets pass; by place. */
  readonly waived: readonly Waived[];
  readonly facts: readonly WaiverFact[];
}

/**
 * Parts findings into those that stand and those that a waiver lets pass. Of several waivers that fit, the one of
 * the narrowest scope counts. `today` is YYYY-MM-DD; without it no waiver expires.
 */
export function settleWaivers(
  findings: readonly Finding[],
  waivers: readonly Standing[],
  today: string | undefined,
): Settled {
  const all = waivers.toSorted((a, b) => comparePlaces(a.place, b.place));
  const expired = all.flatMap((one) => expiry(one, findings, today));
  const past = new Set(expired.map(({ waiver }) => waiver));
  const holding = all
    .filter((waiver) => waiver.holds && !past.has(waiver))
    .toSorted((a, b) => width(a) - width(b));
  const byRule = Map.groupBy(holding, ({ rule }) => rule);

  const waived = new Map<Standing, Finding[]>();
  const standing: Finding[] = [];
  for (const finding of findings) {
    const waiver = byRule.get(finding.rule)?.find((one) => fits(one, finding));
    if (waiver === undefined) standing.push(finding);
    else waived.set(waiver, [...(waived.get(waiver) ?? []), finding]);
  }
  const unused = all.filter((waiver) => holding.includes(waiver) && !waived.has(waiver));
  return {
    findings: standing,
    waived: all.map((one) => reported(one, waived.get(one) ?? [])),
    facts: [...expired.map(({ fact }) => fact), ...unused.map(unusedFact)],
  };
}

/** That a waiver is past its day. */
function expiry(
  waiver: Standing,
  findings: readonly Finding[],
  today: string | undefined,
): { waiver: Standing; fact: WaiverFact }[] {
  const { procedure, rule, until } = waiver;
  if (until === undefined || today === undefined || until.text >= today) return [];
  const comeBack = findings.filter((finding) => fits(waiver, finding)).length;
  const dates = { until: until.text, today };
  const fact = { procedure, rule, place: until.place, ...dates, comeBack };
  return [{ waiver, fact: { ...fact, kind: 'waiver-expired' } }];
}

function unusedFact({ procedure, place, rule, item, ifUnused }: Standing): WaiverFact {
  return { kind: 'waiver-unused', procedure, place, rule, item, ...ifUnused };
}

function fits({ rule, item, scope, machineFile }: Standing, finding: Finding): boolean {
  if (finding.rule !== rule) return false;
  if (item !== undefined && finding.item !== item) return false;
  // A waiver that names an entry reaches what is found at it in the catalogue of the machine.
  if (item !== undefined && finding.file === machineFile && machineFile !== scope.file) return true;
  return (
    finding.file === scope.file &&
    finding.start.offset >= scope.start.offset &&
    finding.end.offset <= scope.end.offset
  );
}

const width = ({ scope }: Standing): number => scope.end.offset - scope.start.offset;

function reported(
  { procedure, rule, item, until, reason, place }: Standing,
  waived: Finding[],
): Waived {
  return {
    rule,
    ...(item !== undefined && { item }),
    ...(until !== undefined && { until: until.text }),
    reason,
    ...placeOf(place),
    procedure,
    waived,
  };
}

import type { Finding } from '../../../schemas/finding.ts';
import type { Waived } from '../../../schemas/report.ts';
import type { LinkedManual } from '../../link/index.ts';
import { comparePlaces, placeOf } from '../../source/index.ts';
import type { Waiver } from '../../syntax/index.ts';
import type { WaiverFact } from './facts.ts';

export interface Settled {
  /** Those that no waiver lets pass. */
  readonly findings: readonly Finding[];
  /** All waivers of the manual, each with what it lets pass; by place. */
  readonly waivers: readonly Waived[];
  readonly facts: readonly WaiverFact[];
}

interface Standing {
  readonly procedure: string;
  /** The file of the machine that the procedure is about. */
  readonly machineFile: string;
  readonly waiver: Waiver;
}

/**
 * Parts findings into those that stand and those that a waiver lets pass. Of several waivers that fit, the one of
 * the narrowest scope counts. `today` is YYYY-MM-DD; without it no waiver expires.
 */
export function settleWaivers(
  findings: readonly Finding[],
  linked: LinkedManual,
  waivable: readonly string[],
  today: string | undefined,
): Settled {
  const all = waiversIn(linked);
  const facts = all.flatMap((one) => faultsOf(one, findings, waivable, today));
  const faulty = new Set(facts.map(({ waiver }) => waiver));
  const holding = all
    .filter(({ waiver }) => !faulty.has(waiver))
    .toSorted((a, b) => width(a.waiver) - width(b.waiver));

  const waived = new Map<Waiver, Finding[]>();
  const standing: Finding[] = [];
  for (const finding of findings) {
    const waiver = holding.find((one) => fits(one, finding))?.waiver;
    if (waiver === undefined) standing.push(finding);
    else waived.set(waiver, [...(waived.get(waiver) ?? []), finding]);
  }
  const unused = all
    .filter(({ waiver }) => !faulty.has(waiver) && !waived.has(waiver))
    .map(({ procedure, waiver: { rule, item, place } }): WaiverFact => {
      return { kind: 'waiver-unused', procedure, place, rule: rule.id, item: item?.id };
    });
  return {
    findings: standing,
    waivers: all.map((one) => reported(one, waived.get(one.waiver) ?? [])),
    facts: [...facts.map(({ fact }) => fact), ...unused],
  };
}

function waiversIn({ procedures }: LinkedManual): Standing[] {
  return [...procedures]
    .flatMap(([id, { procedure, catalogue }]) =>
      procedure.waivers.map((waiver) => ({
        procedure: id,
        machineFile: catalogue.file,
        waiver,
      })),
    )
    .toSorted((a, b) => comparePlaces(a.waiver.place, b.waiver.place));
}

/** Why a waiver does not hold. */
function faultsOf(
  standing: Standing,
  findings: readonly Finding[],
  waivable: readonly string[],
  today: string | undefined,
): { waiver: Waiver; fact: WaiverFact }[] {
  const { procedure, waiver } = standing;
  const { place, reason, until, rule } = waiver;
  const about = { procedure, rule: rule.id };
  const faults: WaiverFact[] = [];
  if (!waivable.includes(rule.id)) {
    faults.push({ ...about, kind: 'waiver-of-no-rule', place: rule.place });
  }
  if (reason === '') faults.push({ ...about, kind: 'waiver-without-reason', place });
  if (until !== undefined && today !== undefined && until.text < today) {
    const comeBack = findings.filter((finding) => fits(standing, finding)).length;
    const dates = { until: until.text, today };
    faults.push({ ...about, kind: 'waiver-expired', place: until.place, ...dates, comeBack });
  }
  return faults.map((fact) => ({ waiver, fact }));
}

function fits({ waiver: { rule, item, scope }, machineFile }: Standing, finding: Finding): boolean {
  if (finding.rule !== rule.id) return false;
  if (item !== undefined && finding.item !== item.id) return false;
  // A waiver that names an entry reaches what is found at it in the catalogue of the machine.
  if (item !== undefined && finding.file === machineFile && machineFile !== scope.file) return true;
  return (
    finding.file === scope.file &&
    finding.start.offset >= scope.start.offset &&
    finding.end.offset <= scope.end.offset
  );
}

const width = ({ scope }: Waiver): number => scope.end.offset - scope.start.offset;

function reported({ procedure, waiver }: Standing, waived: Finding[]): Waived {
  const { rule, item, until, reason, place } = waiver;
  return {
    rule: rule.id,
    ...(item !== undefined && { item: item.id }),
    ...(until !== undefined && { until: until.text }),
    reason,
    ...placeOf(place),
    procedure,
    waived,
  };
}

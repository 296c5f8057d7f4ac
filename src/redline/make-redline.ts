import type { Finding } from '../../schemas/finding.ts';
import type { Change, Redline, Side } from '../../schemas/redline.ts';
import type { Report } from '../../schemas/report.ts';
import type { LinkedManual } from '../link/index.ts';
import { printOf } from '../report/index.ts';
import { compareText } from '../source/index.ts';
import { allFacts } from './all-facts.ts';
import type { Fact } from './fact.ts';
import { type ManualPair, pairManuals } from './manual-pair.ts';
import { Reach } from './reach.ts';
import { riskOf } from './risk-of.ts';
import { rankOf } from './risks.ts';
import { sentenceOf } from './sentences.ts';

/** One side of a redline: the manual as its authors wrote it, and what the check says of it. */
export interface Revision {
  readonly linked: LinkedManual;
  readonly findings: readonly Finding[];
  readonly side: Side;
}

/** What of the meaning of a manual changed, most dangerous first. Each change is told once. */
export function makeRedline(before: Revision, after: Revision, tool: Report['tool']): Redline {
  const pair = pairManuals(before.linked, after.linked);
  const reach = { before: new Reach(before.linked), after: new Reach(after.linked) };
  const changes = allFacts(pair, reach).map(
    (fact): Change => ({ ...fact, risk: riskOf(fact), message: sentenceOf(fact) }),
  );
  const { title, edition } = after.linked.manual.settings;
  return {
    tool,
    manual: { title, ...(edition === undefined ? {} : { edition }) },
    before: before.side,
    after: after.side,
    changes: sorted(changes),
    procedures: changedProcedures(pair, changes, reach.after),
    findings: {
      new: without(after.findings, before.findings),
      gone: without(before.findings, after.findings),
    },
    summary: summaryOf(changes),
  };
}

/** Most dangerous first; of one class what goes down before what goes up; then by place. */
function sorted(changes: readonly Change[]): Change[] {
  const weight = ({ direction, after }: Change): number => {
    if (direction === 'lower' || direction === 'later' || direction === 'wider') return 0;
    return after === undefined ? 1 : 2;
  };
  const placed = changes.map((change, i) => ({ change, i }));
  return placed
    .sort(
      (a, b) =>
        rankOf(a.change.risk) - rankOf(b.change.risk) ||
        weight(a.change) - weight(b.change) ||
        compareText(homeOf(a.change), homeOf(b.change)) ||
        a.i - b.i,
    )
    .map(({ change }) => change);
}

/** Entries of machines before what stands in procedures. */
const homeOf = ({ procedure, machine }: Fact): string =>
  procedure === undefined ? ` ${machine ?? ''}` : procedure;

function changedProcedures(
  { procedures, after }: ManualPair,
  changes: readonly Change[],
  reach: Reach,
): Redline['procedures'] {
  const before = new Map(procedures.pairs.map(([one, other]) => [other.procedure.id, one]));
  const counts = Map.groupBy(changes, ({ procedure }) => procedure);
  return [...after.procedures.values()].flatMap((one) => {
    const { id, front } = one.procedure;
    const own = counts.get(id) ?? [];
    if (own.length === 0) return [];
    const was = before.get(id)?.procedure.front.revision;
    return [
      {
        id,
        title: front.title,
        revision: {
          ...(was === undefined ? {} : { before: was }),
          ...(front.revision === undefined ? {} : { after: front.revision }),
        },
        changes: own.length,
        performedBy: reach
          .of([one])
          .map(({ procedure }) => procedure)
          .filter((other) => other !== id),
      },
    ];
  });
}

/** The findings that another check does not have, each as often as it lacks it. */
function without(findings: readonly Finding[], others: readonly Finding[]): Finding[] {
  const left = new Map<string, number>();
  for (const print of others.map(printOf)) left.set(print, (left.get(print) ?? 0) + 1);
  return findings.filter((finding) => {
    const print = printOf(finding);
    const count = left.get(print) ?? 0;
    left.set(print, count - 1);
    return count <= 0;
  });
}

function summaryOf(changes: readonly Change[]): Redline['summary'] {
  const count = (id: Change['risk']): number => changes.filter(({ risk }) => risk === id).length;
  return {
    protection: count('protection'),
    'put-back': count('put-back'),
    joint: count('joint'),
    fluid: count('fluid'),
    proof: count('proof'),
    order: count('order'),
    work: count('work'),
    record: count('record'),
    unit: count('unit'),
    words: count('words'),
  };
}

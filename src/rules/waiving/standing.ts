import type { Place } from '../../../schemas/finding.ts';
import type { ManualSettings } from '../../../schemas/manual.ts';
import { nearest } from '../../source/index.ts';
import type { Waiver } from '../../syntax/index.ts';
import type { Subject } from '../rule.ts';
import type { WaiverFact } from './facts.ts';
import { waivable } from './waivable.ts';

/** A waiver as it stands in a procedure. Plain data. */
export interface Standing {
  readonly procedure: string;
  /** The file of the machine that the procedure is about. */
  readonly machineFile: string;
  readonly rule: string;
  readonly item: string | undefined;
  /** The last day on which it holds, YYYY-MM-DD. */
  readonly until: { readonly text: string; readonly place: Place } | undefined;
  readonly reason: string;
  readonly scope: Place;
  readonly place: Place;
  /** False where it is at fault, so that it lets nothing pass. */
  readonly holds: boolean;
  /** What may be said of it where it lets nothing pass. */
  readonly ifUnused: Pick<
    Extract<WaiverFact, { kind: 'waiver-unused' }>,
    'isOff' | 'isKnown' | 'near'
  >;
}

/** The waivers of procedures, in order, and what is wrong with them whatever is found. */
export function standingIn(
  subjects: readonly Subject[],
  levels: ManualSettings['rules'],
  ruleIds: readonly string[],
): { readonly waivers: readonly Standing[]; readonly facts: readonly WaiverFact[] } {
  const known = new Set(waivable(ruleIds));
  const facts: WaiverFact[] = [];
  const waivers = subjects.flatMap((subject) =>
    subject.one.procedure.waivers.map((waiver) => {
      const faults = faultsOf(subject.id, waiver, known);
      facts.push(...faults);
      return standing(subject, waiver, faults.length === 0, levels);
    }),
  );
  return { waivers, facts };
}

function faultsOf(
  procedure: string,
  { rule, reason, place }: Waiver,
  known: ReadonlySet<string>,
): WaiverFact[] {
  const about = { procedure, rule: rule.id };
  return [
    ...(known.has(rule.id)
      ? []
      : [{ ...about, kind: 'waiver-of-no-rule' as const, place: rule.place }]),
    ...(reason === '' ? [{ ...about, kind: 'waiver-without-reason' as const, place }] : []),
  ];
}

function standing(
  { id, one }: Subject,
  { rule, item, until, reason, scope, place }: Waiver,
  holds: boolean,
  levels: ManualSettings['rules'],
): Standing {
  const items = [...one.catalogue.items.keys()];
  const isKnown = item === undefined || items.includes(item.id);
  const near = isKnown ? undefined : nearest(item.id, items);
  return {
    procedure: id,
    machineFile: one.catalogue.file,
    rule: rule.id,
    item: item?.id,
    until: until && { text: until.text, place: until.place },
    reason,
    scope,
    place,
    holds,
    ifUnused: {
      isOff: Object.hasOwn(levels, rule.id) && levels[rule.id] === 'off',
      isKnown,
      ...(near !== undefined && { near }),
    },
  };
}

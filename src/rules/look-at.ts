import type { Finding, Level } from '../../schemas/finding.ts';
import type { ManualSettings } from '../../schemas/manual.ts';
import type { Performing } from '../ledger/index.ts';
import { allActions, allSteps } from '../link/index.ts';
import { placeOf } from '../source/index.ts';
import type { Procedure } from '../syntax/index.ts';
import type { Found, Look, Size } from './look.ts';
import type { Draft, Examined, Rule } from './rule.ts';
import { unchangeable } from './unchangeable.ts';
import type { Standing } from './waiving/standing.ts';

type Levels = ManualSettings['rules'];

/** Runs rules over one part of a manual. `levels` changes the level of a rule or turns it off. */
export function lookAt(
  rules: readonly Rule[],
  examined: Examined,
  levels: Levels,
  { performing = [], waivers = [] }: Rest = {},
): Look {
  const settled = rules.flatMap((rule) =>
    [...(rule.settles?.(examined) ?? [])].map((key) => keyOf(rule, key)),
  );
  return {
    found: foundBy(rules, examined, levels, owners(examined)),
    settled: [...new Set(settled)],
    performing,
    waivers,
    size: sizeOf(examined),
  };
}

interface Rest {
  readonly performing?: readonly Performing[];
  readonly waivers?: readonly Standing[];
}

/** What rules say; `owners` gives the procedure of a file for a draft that names none. */
export function foundBy<T>(
  rules: readonly (Pick<Rule, 'id' | 'level'> & { check(told: T): Iterable<Draft> })[],
  told: T,
  levels: Levels,
  owners: ReadonlyMap<string, string>,
): Found[] {
  return rules.flatMap((rule) => {
    const level = levelOf(rule, levels);
    if (level === undefined) return [];
    return [...rule.check(told)].map((draft): Found => {
      const { fact, unless, onlyIf } = draft;
      return {
        finding: finding(rule, level, draft, draft.procedure ?? owners.get(draft.place.file)),
        ...(fact !== undefined && { fact }),
        ...(unless !== undefined && { unless: unless.map((key) => keyOf(rule, key)) }),
        ...(onlyIf !== undefined && { onlyIf: keyOf(rule, onlyIf) }),
      };
    });
  });
}

function sizeOf({ subjects }: Examined): Size {
  const sum = (count: (one: Procedure) => number): number =>
    subjects.reduce((all, { expanded }) => all + count(expanded.procedure), 0);
  return {
    procedures: subjects.length,
    steps: sum((one) => [...allSteps(one)].length),
    actions: sum((one) => [...allActions(one)].length),
  };
}

const keyOf = ({ id }: Pick<Rule, 'id'>, key: string): string => `${id} ${key}`;

const owners = ({ subjects }: Examined): ReadonlyMap<string, string> =>
  new Map(subjects.map(({ id, one }) => [one.procedure.file, id]));

function levelOf({ id, level }: Pick<Rule, 'id' | 'level'>, levels: Levels): Level | undefined {
  const chosen = unchangeable.has(id) || !Object.hasOwn(levels, id) ? undefined : levels[id];
  if (chosen === 'off') return undefined;
  return chosen ?? level;
}

/** Plain JSON: what a draft leaves undefined is not there at all. */
function finding(
  rule: Pick<Rule, 'id'>,
  level: Level,
  draft: Draft,
  procedure: string | undefined,
): Finding {
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
    related: (draft.related ?? []).map((one) => ({ ...placeOf(one), label: one.label })),
    ...(help !== undefined && { help }),
    ...(fix !== undefined && { fix }),
  };
}

import type { ManualSettings } from '../../schemas/manual.ts';
import type { ManualModel } from '../catalogue/index.ts';
import { allItems } from '../derive/index.ts';
import type { LinkedManual } from '../link/index.ts';
import { compareText } from '../source/index.ts';
import { ruleBehind, ruleName, rulesOf } from './default-torques.ts';
import { quantityShifts } from './entry-shifts.ts';
import { type Fact, type Shift, sides } from './fact.ts';
import type { ManualPair } from './manual-pair.ts';
import { memberText } from './member-text.ts';
import { onOneLine } from './plain-words.ts';
import { present } from './procedure-facts.ts';
import type { Reach } from './reach.ts';
import { torqueShifts } from './torque-shifts.ts';

const plain = [
  'title',
  'document-prefix',
  'edition',
  'issued',
  'publisher',
  'address',
  'language',
  'systems',
] as const;

/** What changed in manual.yaml, and which machines came, went or got another name. */
export function manualFacts(
  { before, after, machines }: ManualPair,
  reach: { readonly before: Reach; readonly after: Reach },
): readonly Fact[] {
  const [a, b] = [before.manual, after.manual];
  const [was, is] = [a.settings, b.settings];
  const texts = plain.flatMap((field): readonly Shift[] => textShift(field, was[field], is[field]));
  const safety: readonly Shift[] =
    onOneLine(was.safety) === onOneLine(is.safety)
      ? []
      : [
          {
            kind: 'setting',
            field: 'safety',
            ...sides(onOneLine(was.safety), onOneLine(is.safety)),
          },
        ];
  const lift = quantityShifts('setting', a.liftLimit, b.liftLimit).map(
    (shift): Shift => ({ ...shift, field: 'lift-limit' }),
  );
  const shifts = [
    ...texts,
    ...safety,
    ...lift,
    ...unitShifts(a, b),
    ...variantShifts(was.variants, is.variants),
    ...neverShifts(was, is),
    ...ruleLevels(was, is),
  ];
  return [
    ...shifts.map((shift): Fact => {
      const path = shift.kind === 'variant' ? 'variants' : pathOf(shift);
      return { ...shift, places: { before: a.placeOf(path), after: b.placeOf(path) }, touches: [] };
    }),
    ...defaultTorqueFacts(before, after, reach.before, reach.after),
    ...machines.gone.map(
      (one): Fact => ({
        kind: 'setting',
        field: 'machine',
        machine: one.id,
        before: one.name,
        places: {},
        touches: [],
      }),
    ),
    ...machines.fresh.map(
      (one): Fact => ({
        kind: 'setting',
        field: 'machine',
        machine: one.id,
        after: one.name,
        places: {},
        touches: [],
      }),
    ),
    ...machines.pairs.flatMap(([one, other]) => [
      ...machineShift(other.id, 'machine-id', one.id, other.id),
      ...machineShift(other.id, 'machine-name', one.name, other.name),
      ...machineShift(other.id, 'machine-note', one.note, other.note),
    ]),
  ];
}

function machineShift(
  machine: string,
  field: string,
  before: string | undefined,
  after: string | undefined,
): readonly Fact[] {
  const [a, b] = [onOneLine(before ?? ''), onOneLine(after ?? '')];
  if (a === b) return [];
  return [{ kind: 'setting', field, machine, ...sides(a, b), places: {}, touches: [] }];
}

function pathOf({ kind, field = '' }: Shift): string {
  if (kind === 'rule-level') return `rules.${field}`;
  return field.startsWith('units ') ? 'units' : field;
}

function textShift(field: string, before: unknown, after: unknown): readonly Shift[] {
  const [a, b] = [memberText(before), memberText(after)];
  return a === b ? [] : [{ kind: 'setting', field, ...sides(a, b) }];
}

function unitShifts(before: ManualModel, after: ManualModel): readonly Shift[] {
  const kinds = Object.keys(after.policy).sort(compareText);
  const units = ({ policy }: ManualModel): ReadonlyMap<string, string> =>
    new Map(
      Object.entries(policy).map(([kind, entry]) => [kind, entry.filter(Boolean).join(', ')]),
    );
  const [a, b] = [units(before), units(after)];
  return kinds.flatMap((kind) => textShift(`units of ${kind}`, a.get(kind), b.get(kind)));
}

type Variants = ManualSettings['variants'];

function variantShifts(before: Variants, after: Variants): readonly Shift[] {
  const ids = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort(compareText);
  return ids.flatMap((id): readonly Shift[] => {
    const [a, b] = [valuesOf(before, id), valuesOf(after, id)];
    return a === b ? [] : [{ kind: 'variant', field: id, ...sides(a, b) }];
  });
}

function valuesOf(variants: Variants, id: string): string | undefined {
  const variant = Object.hasOwn(variants, id) ? variants[id] : undefined;
  return memberText(Array.isArray(variant) ? variant : variant?.values);
}

function neverShifts(was: ManualSettings, is: ManualSettings): readonly Shift[] {
  const lost = was.never.filter((one) => !is.never.includes(one)).toSorted(compareText);
  const won = is.never.filter((one) => !was.never.includes(one)).toSorted(compareText);
  return [
    ...lost.map((one): Shift => ({ kind: 'variant', field: 'never', before: one })),
    ...won.map((one): Shift => ({ kind: 'variant', field: 'never', after: one })),
  ];
}

const levels = ['off', 'note', 'warning', 'error'];

function ruleLevels(was: ManualSettings, is: ManualSettings): readonly Shift[] {
  const ids = [...new Set([...Object.keys(was.rules), ...Object.keys(is.rules)])].sort(compareText);
  return ids.flatMap((id): readonly Shift[] => {
    const [a, b] = [was.rules[id], is.rules[id]];
    if (a === b) return [];
    // Without the rule's own level, what is not said counts as the highest.
    const rank = (level: string | undefined): number =>
      level === undefined ? levels.length - 1 : levels.indexOf(level);
    const direction = rank(b) < rank(a) ? 'lower' : 'higher';
    const own = 'the level of the rule itself';
    return [{ kind: 'rule-level', field: id, before: a ?? own, after: b ?? own, direction }];
  });
}

/** A rule by thread and class changes every fastener that has no torque of its own. */
function defaultTorqueFacts(
  before: LinkedManual,
  after: LinkedManual,
  reachBefore: Reach,
  reachAfter: Reach,
): readonly Fact[] {
  const [old, now] = [rulesOf(before.manual), rulesOf(after.manual)];
  const names = [...new Set([...old.keys(), ...now.keys()])].sort(compareText);
  return names.flatMap((name) => {
    const [one, other] = [old.get(name), now.get(name)];
    const side = other === undefined ? before : after;
    const items = allItems(side).flatMap(({ item }) => {
      const rule = ruleBehind(item, side.manual);
      return rule !== undefined && ruleName(rule) === name ? [item] : [];
    });
    const touches = (other === undefined ? reachBefore : reachAfter).ofItems(items);
    return torqueShifts(one?.torque, other?.torque).map(
      (shift): Fact => ({
        ...shift,
        ...(shift.kind === 'torque' ? { kind: 'default-torque' as const } : {}),
        field: name,
        places: present({
          before: one?.placeOf('torque'),
          after: other?.placeOf('torque'),
        }),
        touches,
      }),
    );
  });
}

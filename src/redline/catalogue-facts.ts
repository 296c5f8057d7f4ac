import { type Item, nameOf } from '../catalogue/index.ts';
import { toldByRule } from './default-torques.ts';
import { entryShifts } from './entry-shifts.ts';
import { type Fact, type Shift, sides } from './fact.ts';
import type { EntriesPair, ManualPair } from './manual-pair.ts';
import { present } from './procedure-facts.ts';
import type { Reach } from './reach.ts';
import { torqueText } from './torque-shifts.ts';

/** What changed in the entries of machines and of procedures, each told once with all procedures that it reaches. */
export function catalogueFacts(pair: ManualPair, before: Reach, after: Reach): readonly Fact[] {
  const isToldByRule = toldByRule(pair.before.manual, pair.after.manual);
  return pair.entries.flatMap((of) => {
    const own = of.procedure;
    const elsewhere = (touches: Fact['touches']): Fact['touches'] =>
      touches.filter(({ procedure }) => procedure !== own);
    const names = new Map(
      pair.procedures.pairs.map(([one, other]) => [one.procedure.id, other.procedure.id]),
    );
    const touchedBefore = (item: Item): Fact['touches'] =>
      elsewhere(
        before.ofItems([item]).map(({ procedure, through }) => ({
          procedure: names.get(procedure) ?? procedure,
          through: through.map((id) => names.get(id) ?? id),
        })),
      );
    return [
      ...of.entries.gone.map(
        (item): Fact => ({
          ...base(of, item),
          kind: 'entry',
          ...sides(entryText(item), undefined),
          field: item.kind,
          places: { before: item.place },
          touches: touchedBefore(item),
        }),
      ),
      ...of.entries.fresh.map(
        (item): Fact => ({
          ...base(of, item),
          kind: 'entry',
          ...sides(undefined, entryText(item)),
          field: item.kind,
          places: { after: item.place },
          touches: elsewhere(after.ofItems([item])),
        }),
      ),
      ...of.entries.pairs.flatMap(([one, other]) => {
        const shifts = entryShifts(one, other, {
          conditions: pair.conditions,
          idOf: of.idOf,
          isToldByRule,
        });
        const all: readonly Shift[] = [
          ...(one.id === other.id
            ? []
            : [{ kind: 'entry-id', before: one.id, after: other.id } as const]),
          ...shifts,
        ];
        const touches = all.length === 0 ? [] : elsewhere(after.ofItems([other]));
        return all.map((shift): Fact => {
          const member = memberOf(shift);
          const places = { before: one.placeOf(member), after: other.placeOf(member) };
          return { ...base(of, other), ...shift, places: present(places), touches };
        });
      }),
    ];
  });
}

const base = (
  { machine, procedure }: EntriesPair,
  item: Item,
): Pick<Fact, 'machine' | 'procedure' | 'item' | 'name'> => ({
  ...(machine === undefined ? {} : { machine }),
  ...(procedure === undefined ? {} : { procedure }),
  item: item.id,
  name: nameOf(item),
});

/** What an entry that came or went is, in a few words. */
function entryText(item: Item): string {
  const count = 'count' in item && item.count > 1 ? `${item.count} ` : '';
  const torque =
    'torque' in item && item.torque !== undefined ? `, ${torqueText(item.torque)}` : '';
  return item.kind === 'hazard'
    ? `${item.signal.toUpperCase()}: ${item.hazard}`
    : `${count}${nameOf(item)}${torque}`;
}

/** Where the author's text of what changed stands. */
function memberOf({ kind, field }: Shift): string {
  if (kind.startsWith('torque')) return 'torque';
  switch (kind) {
    case 'hazard-signal':
      return 'signal';
    case 'machines':
      return 'when';
    case 'limit':
      return field === undefined ? 'limits' : `limits.${field}`;
    case 'count':
    case 'fluid':
    case 'mix':
    case 'capacity':
      return kind;
    case 'unit':
      return field ?? 'torque';
    default:
      return field ?? '';
  }
}

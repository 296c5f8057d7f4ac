import type { Place } from '../../schemas/finding.ts';
import type { Procedure, Waiver } from '../syntax/index.ts';
import { type Shift, sides } from './fact.ts';
import type { Names } from './names.ts';
import { pairAlike } from './pair-alike.ts';

export interface PlacedShift {
  readonly shift: Shift;
  readonly before: Place | undefined;
  readonly after: Place | undefined;
}

/** Waivers that came, went, or let other things pass: for longer, in more of the text, about more items. */
export function waiverFacts(
  before: Procedure,
  after: Procedure,
  names: Names,
): readonly PlacedShift[] {
  const like = (a: Waiver, b: Waiver): number => {
    if (a.rule.id !== b.rule.id) return 0;
    const sameItem = (a.item && names.item(a.item.id)) === b.item?.id ? 0.5 : 0;
    const sameScope = scopeOf(a, before).rank === scopeOf(b, after).rank ? 0.25 : 0;
    return 0.25 + sameItem + sameScope;
  };
  const { pairs, gone, fresh } = pairAlike(before.waivers, after.waivers, like, 0.25);
  return [
    ...gone.map((one) => ({
      shift: { kind: 'waiver', ...about(one), before: textOf(one, before, names) } as const,
      before: one.place,
      after: undefined,
    })),
    ...fresh.map((one) => ({
      shift: { kind: 'waiver', ...about(one), after: textOf(one, after) } as const,
      before: undefined,
      after: one.place,
    })),
    ...pairs.flatMap(([one, other]): readonly PlacedShift[] => {
      const places = { before: one.place, after: other.place };
      const [a, b] = [textOf(one, before, names), textOf(other, after)];
      const direction = directionOf(one, other, before, after, names);
      const told: Shift[] = [
        ...(a === b
          ? []
          : [{ kind: 'waiver', before: a, after: b, ...(direction && { direction }) } as const]),
        ...(one.reason === other.reason
          ? []
          : [{ kind: 'words', field: 'reason', ...sides(one.reason, other.reason) } as const]),
      ];
      return told.map((shift) => ({ shift: { ...shift, ...about(other) }, ...places }));
    }),
  ];
}

const about = ({ rule, item }: Waiver): Pick<Shift, 'field' | 'item'> => ({
  field: rule.id,
  ...(item === undefined ? {} : { item: item.id }),
});

function textOf(waiver: Waiver, procedure: Procedure, names?: Names): string {
  const { item, until } = waiver;
  const id = item === undefined ? undefined : (names?.item(item.id) ?? item.id);
  const of = id === undefined ? '' : ` of ${id}`;
  const last = until === undefined ? '' : ` until ${until.text}`;
  return `${scopeOf(waiver, procedure).words}${of}${last}`;
}

interface Scope {
  readonly rank: number;
  readonly words: string;
}

/** How much of the text a waiver is for. */
function scopeOf({ scope }: Waiver, procedure: Procedure): Scope {
  if (scope.start.offset <= 0 && scope.end.offset >= procedure.text.length) {
    return { rank: 2, words: 'in the whole procedure' };
  }
  const section = procedure.sections.find(
    ({ heading, place }) => heading.length > 0 && place.start.offset === scope.start.offset,
  );
  return section === undefined
    ? { rank: 0, words: 'in a step' }
    : { rank: 1, words: `under “${section.title ?? section.id}”` };
}

function directionOf(
  one: Waiver,
  other: Waiver,
  before: Procedure,
  after: Procedure,
  names: Names,
): 'wider' | 'narrower' | undefined {
  const never = '9999-99-99';
  const [last, now] = [one.until?.text ?? never, other.until?.text ?? never];
  const [a, b] = [scopeOf(one, before).rank, scopeOf(other, after).rank];
  const [item, otherItem] = [one.item && names.item(one.item.id), other.item?.id];
  const isWider = now > last || b > a || (item !== undefined && otherItem === undefined);
  const isOther = item !== otherItem && item !== undefined && otherItem !== undefined;
  if (isWider || isOther) return 'wider';
  return now < last || b < a || item !== otherItem ? 'narrower' : undefined;
}

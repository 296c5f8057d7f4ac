import { parseQuantity } from '../quantity/index.ts';
import { compareText } from '../source/index.ts';
import type { Action, HazardPanel, Perform, Reverse } from '../syntax/index.ts';
import {
  type ActionComparison,
  actionKey,
  actionPrint,
  actionShifts,
  waysShift,
} from './action-facts.ts';
import { quantityShifts } from './entry-shifts.ts';
import { type Shift, sides } from './fact.ts';
import { figureShifts } from './figure-shifts.ts';
import type { HazardSaid } from './hazard-shifts.ts';
import { hazardShifts } from './hazard-shifts.ts';
import { listShifts } from './list-shifts.ts';
import type { Names } from './names.ts';
import { pairAlike, shared, wordList } from './pair-alike.ts';
import type { Inside, Piece } from './piece.ts';

export interface PieceComparison extends ActionComparison {
  /** What a panel says, before and after. */
  readonly saidBefore: (panel: HazardPanel) => HazardSaid;
  readonly saidAfter: (panel: HazardPanel) => HazardSaid;
}

/** Something that stands in one of two texts of a piece only: it may have gone elsewhere. */
export type Loose =
  | { readonly what: 'action'; readonly of: Action }
  | { readonly what: 'hazard'; readonly of: HazardPanel }
  | { readonly what: 'perform'; readonly of: Perform }
  | { readonly what: 'reverse'; readonly of: Reverse };

export interface PieceShifts {
  readonly shifts: readonly Shift[];
  readonly gone: readonly Loose[];
  readonly fresh: readonly Loose[];
}

/** How a piece that stands on both sides changed, but for its place. */
export function pieceShifts(before: Piece, after: Piece, to: PieceComparison): PieceShifts {
  const parts = [
    actionsOf(before, after, to),
    hazardsOf(before, after, to),
    performsOf(before, after, to),
    reversesOf(before, after, to),
  ];
  const when = to.conditions.shift(before.under.when, after.under.when);
  const [a, b] = [before.under.ways, after.under.ways];
  return {
    shifts: [
      ...parts.flatMap(({ shifts }) => shifts),
      ...(when === undefined ? [] : [when]),
      ...(a.join('\n') === b.join('\n') ? [] : [waysShift(a, b)]),
      ...factShifts(before, after, to),
      ...wordShifts(before, after),
    ],
    gone: parts.flatMap(({ gone }) => gone),
    fresh: parts.flatMap(({ fresh }) => fresh),
  };
}

/** What stands in a piece and may be gone from it, or new in it. */
export function looseOf({ actions, hazards, performs, reverses }: Piece): readonly Loose[] {
  return [
    ...actions.map(({ of }) => ({ what: 'action', of }) as const),
    ...hazards.map(({ of }) => ({ what: 'hazard', of }) as const),
    ...performs.map(({ of }) => ({ what: 'perform', of }) as const),
    ...reverses.map(({ of }) => ({ what: 'reverse', of }) as const),
  ];
}

function actionsOf(before: Piece, after: Piece, to: PieceComparison): PieceShifts {
  const like = (a: Inside<Action>, b: Inside<Action>): number => {
    if (actionKey(a.of, to.names) !== actionKey(b.of, to.same)) return 0;
    return actionPrint(a, to.names) === actionPrint(b, to.same) ? 1 : 0.9;
  };
  const { pairs, gone, fresh } = pairAlike(before.actions, after.actions, like, 0.9);
  return {
    shifts: pairs.flatMap(([a, b]) =>
      actionShifts(a, b, to).map((shift) => ({ ...shift, item: b.of.item.id })),
    ),
    gone: gone.map(({ of }) => ({ what: 'action', of })),
    fresh: fresh.map(({ of }) => ({ what: 'action', of })),
  };
}

function hazardsOf(before: Piece, after: Piece, to: PieceComparison): PieceShifts {
  const like = (a: Inside<HazardPanel>, b: Inside<HazardPanel>): number => {
    const [one, two] = [a.of.of?.id, b.of.of?.id];
    if (one !== undefined && two !== undefined) return to.names.item(one) === two ? 1 : 0;
    const [was, is] = [to.saidBefore(a.of), to.saidAfter(b.of)];
    return shared(wordList(`${was.hazard} ${was.harm}`), wordList(`${is.hazard} ${is.harm}`));
  };
  const { pairs, gone, fresh } = pairAlike(before.hazards, after.hazards, like, 0.4);
  const shifts = pairs.flatMap(([a, b]): readonly Shift[] => {
    const [was, is] = [to.saidBefore(a.of), to.saidAfter(b.of)];
    // What an entry says of a hazard is told once, at the entry.
    const isEntry = a.of.of !== undefined && b.of.of !== undefined;
    const when = to.conditions.shift(a.under.when, b.under.when);
    const told: readonly Shift[] = [
      ...(isEntry ? [] : hazardShifts(was, is)),
      ...(when === undefined ? [] : [{ ...when, field: 'hazard' }]),
    ];
    const entry = b.of.of === undefined ? {} : { item: b.of.of.id };
    return told.map((shift) => ({ ...shift, name: is.hazard, ...entry }));
  });
  return {
    shifts,
    gone: gone.map(({ of }) => ({ what: 'hazard', of })),
    fresh: fresh.map(({ of }) => ({ what: 'hazard', of })),
  };
}

function performsOf(before: Piece, after: Piece, to: PieceComparison): PieceShifts {
  const like = (a: Inside<Perform>, b: Inside<Perform>): number => {
    if (to.names.procedure(a.of.procedure.id) !== b.of.procedure.id) return 0;
    return performText(a.of, to.names) === performText(b.of, to.same) ? 1 : 0.9;
  };
  const { pairs, gone, fresh } = pairAlike(before.performs, after.performs, like, 0.9);
  const shifts = pairs.flatMap(([a, b]): readonly Shift[] => {
    const [one, two] = [performText(a.of, to.names), performText(b.of, to.same)];
    const when = to.conditions.shift(a.under.when, b.under.when);
    const field = b.of.procedure.id;
    return [
      ...(one === two ? [] : [{ kind: 'perform', field, before: one, after: two } as const]),
      ...(when === undefined ? [] : [{ ...when, field }]),
    ];
  });
  return {
    shifts,
    gone: gone.map(({ of }) => ({ what: 'perform', of })),
    fresh: fresh.map(({ of }) => ({ what: 'perform', of })),
  };
}

/** "open-hood", "open-hood, part removal, at the right". */
export function performText({ procedure, part, each }: Perform, names: Names): string {
  const id = names.procedure(procedure.id);
  const of = part === undefined ? '' : `, part ${names.section(part.id, id)}`;
  return `${id}${of}${each === undefined ? '' : `, at the ${each.id}`}`;
}

function reversesOf(before: Piece, after: Piece, to: PieceComparison): PieceShifts {
  const like = (a: Inside<Reverse>, b: Inside<Reverse>): number =>
    to.names.section(a.of.of.id) === b.of.of.id ? 1 : 0;
  const { pairs, gone, fresh } = pairAlike(before.reverses, after.reverses, like, 1);
  const shifts = pairs.flatMap(([a, b]): readonly Shift[] => {
    const [one, two] = [exceptText(a.of, to.names), exceptText(b.of, to.same)];
    const when = to.conditions.shift(a.under.when, b.under.when);
    const field = b.of.of.id;
    return [
      ...(one === two ? [] : [{ kind: 'reverse', field, before: one, after: two } as const]),
      ...(when === undefined ? [] : [{ ...when, field }]),
    ];
  });
  return {
    shifts,
    gone: gone.map(({ of }) => ({ what: 'reverse', of })),
    fresh: fresh.map(({ of }) => ({ what: 'reverse', of })),
  };
}

function exceptText({ except }: Reverse, names: Names): string {
  const ids = except.map(({ id }) => names.item(id)).sort(compareText);
  return ids.length === 0 ? 'everything' : `everything except ${ids.join(', ')}`;
}

/** People, times, tools, record boxes, figures and the steps that must come first. */
function factShifts(before: Piece, after: Piece, { names, same }: PieceComparison): Shift[] {
  const [a, b] = [before.step, after.step];
  const people: Shift[] =
    a === undefined || b === undefined || a.people === b.people
      ? []
      : [
          {
            kind: 'people',
            before: String(a.people),
            after: String(b.people),
            direction: b.people < a.people ? 'lower' : 'higher',
          },
        ];
  const times = (['time', 'wait'] as const).flatMap((field) =>
    timeShifts(a?.[field]?.text, b?.[field]?.text).map((shift) => ({ ...shift, field })),
  );
  const tools = (piece: Piece, of: Names): string[] =>
    [...(piece.step?.tools ?? []), ...(piece.step?.consumables ?? [])].map(({ id }) => of.item(id));
  const boxes = (piece: Piece, of: Names): string[] =>
    piece.boxes.map((box) => box.replace(/(?<= ).*/, (id) => of.item(id)));
  const { needs } = before;
  return [
    ...listShifts(
      'needs',
      needs.map((id) => names.step(id)),
      after.needs,
    ),
    ...people,
    ...times,
    ...listShifts('tool', tools(before, names), tools(after, same)).map(itemOfSide),
    ...listShifts('record-box', boxes(before, names), boxes(after, same)),
    ...figureShifts(before.figures, after.figures, names),
    ...plainShift('needs', a?.at && names.item(a.at.id), b?.at?.id).map(
      (shift): Shift => ({ ...shift, field: 'at' }),
    ),
  ];
}

const itemOfSide = (shift: Shift): Shift => ({ ...shift, item: shift.after ?? shift.before ?? '' });

function timeShifts(before: string | undefined, after: string | undefined): readonly Shift[] {
  const [a, b] = [before, after].map((text) =>
    text === undefined ? undefined : parseQuantity(text).value,
  );
  if (before !== undefined && a === undefined) return plainShift('time', before, after);
  if (after !== undefined && b === undefined) return plainShift('time', before, after);
  return quantityShifts('time', a, b);
}

function plainShift(kind: Shift['kind'], before?: string, after?: string): readonly Shift[] {
  return before === after ? [] : [{ kind, ...sides(before, after) }];
}

function wordShifts(before: Piece, after: Piece): readonly Shift[] {
  return plainShift('words', before.words.join(' '), after.words.join(' '));
}

import fc from 'fast-check';
import { type Condition, printCondition } from '../../src/applicability/index.ts';
import { conditionArbitrary } from '../applicability/enumeration.ts';
import { sometimes } from './sometimes.ts';
import type { Entry, Family, World } from './world.ts';

/** One piece of a procedure, before it is written as Markdown. */
export type Piece =
  | { readonly is: 'step'; readonly when: Condition | undefined; readonly acts: readonly Act[] }
  | { readonly is: 'when'; readonly when: Condition; readonly inside: readonly Piece[] }
  | { readonly is: 'repeat'; readonly inside: readonly Piece[] }
  | { readonly is: 'if'; readonly inside: readonly Piece[] }
  | { readonly is: 'either'; readonly ways: readonly (readonly Piece[])[] }
  | { readonly is: 'perform'; readonly when: Condition | undefined };

export interface Act {
  readonly verb: string;
  readonly item: string;
  readonly attributes: string;
  readonly when: Condition | undefined;
}

const verbs: Readonly<Record<Family, readonly string[]>> = {
  fasteners: ['remove', 'install', 'loosen', 'tighten', 'torque', 'replace', 'discard'],
  parts: ['remove', 'install', 'set-aside', 'return', 'replace', 'discard'],
  connections: ['disconnect', 'connect', 'torque', 'cap', 'uncap'],
  circuits: ['drain', 'fill', 'bleed', 'relieve'],
  energy: ['isolate', 'restore'],
  controls: ['set'],
  aids: ['fit', 'withdraw'],
};

/** Some states of each, for checks that say how a thing stands. */
const statesOf: Readonly<Record<Family, readonly string[]>> = {
  fasteners: ['tight', 'out'],
  parts: ['in', 'out'],
  connections: ['made', 'open'],
  circuits: ['full', 'drained'],
  energy: ['live', 'isolated'],
  controls: ['rest', 'up'],
  aids: ['away', 'fitted'],
};

export function actArbitrary({ attributes, entries }: World): fc.Arbitrary<Act> {
  const when = sometimes(conditionArbitrary(attributes), 3);
  return fc.constantFrom(...entries).chain((entry) =>
    fc
      .record({
        verb: fc.constantFrom(...verbs[entry.family], 'check'),
        state: fc.constantFrom(...statesOf[entry.family]),
        qty: sometimes(fc.integer({ min: 1, max: 5 }), 4),
        isNew: fc.integer({ min: 0, max: 3 }).map((n) => n === 0),
        to: fc.constantFrom('rest', 'up', 'down'),
        part: fc.constantFrom('', 'left', 'right'),
        partly: fc.boolean(),
        when,
      })
      .map(({ when: own, verb, ...how }) => ({
        verb,
        item: entry.id,
        attributes: written(entry, verb, how),
        when: own,
      })),
  );
}

interface How {
  readonly qty: number | undefined;
  readonly isNew: boolean;
  readonly to: string;
  readonly state: string;
  readonly part: string;
  readonly partly: boolean;
}

function written(entry: Entry, verb: string, how: How): string {
  const counted = ['fasteners', 'aids'].includes(entry.family) && how.qty !== undefined;
  return [
    counted && verb !== 'check' ? `qty=${how.qty}` : '',
    how.isNew && verb === 'install' ? 'new' : '',
    verb === 'set' ? `to=${how.to}` : '',
    verb === 'check' ? `to=${how.state}` : '',
    entry.each && how.part !== '' ? `each=${how.part}` : '',
    verb === 'drain' && how.partly ? 'amount="1 L"' : '',
  ]
    .filter(Boolean)
    .join(' ');
}

/** All actions of a piece, in order of reading. */
export function actsIn(piece: Piece): readonly Act[] {
  switch (piece.is) {
    case 'step':
      return piece.acts;
    case 'either':
      return piece.ways.flatMap((way) => way.flatMap(actsIn));
    case 'perform':
      return [];
    default:
      return piece.inside.flatMap(actsIn);
  }
}

/** Pieces of a procedure; `withBranches` and `withPerform` let it have branches and performs. */
export function piecesArbitrary(
  world: World,
  { withBranches, withPerform }: { withBranches: boolean; withPerform: boolean },
): fc.Arbitrary<readonly Piece[]> {
  const condition = conditionArbitrary(world.attributes);
  const when = sometimes(condition, 3);
  const step = fc.record({
    is: fc.constant('step' as const),
    when,
    acts: fc.array(actArbitrary(world), { minLength: 1, maxLength: 2 }),
  });
  const few = fc.array(step, { minLength: 1, maxLength: 3 });
  const guarded = fc.record({ is: fc.constant('when' as const), when: condition, inside: few });
  const repeat = fc.record({ is: fc.constant('repeat' as const), inside: few });
  const branch = fc.oneof(
    fc.record({ is: fc.constant('if' as const), inside: few }),
    fc.record({
      is: fc.constant('either' as const),
      ways: fc.array(few, { minLength: 2, maxLength: 3 }),
    }),
  );
  const body = fc.array(
    fc.oneof(
      { weight: 8, arbitrary: step },
      { weight: 2, arbitrary: guarded },
      { weight: 1, arbitrary: repeat },
      { weight: withBranches ? 2 : 0, arbitrary: branch },
      {
        weight: withPerform ? 2 : 0,
        arbitrary: fc.record({ is: fc.constant('perform' as const), when }),
      },
    ),
    { minLength: 1, maxLength: 9 },
  );
  return body.map(atMostOnce);
}

/** Two branches and one perform at most, so that every way can be gone. */
function atMostOnce(pieces: readonly Piece[]): readonly Piece[] {
  let branches = 0;
  let performs = 0;
  return pieces.filter((piece) => {
    if (piece.is === 'perform') return ++performs <= 1;
    return piece.is === 'if' || piece.is === 'either' ? ++branches <= 2 : true;
  });
}

/** The Markdown of pieces. Branches have labels of their own that start with `name`. */
export function markdownOf(pieces: readonly Piece[], name: string): string {
  let branches = 0;
  const label = () => `${name} finding ${++branches}`;
  const write = (some: readonly Piece[]): string => some.map(one).join('\n\n');
  function one(piece: Piece): string {
    switch (piece.is) {
      case 'step':
        return stepText(piece.acts, piece.when);
      case 'when':
        return block(`when[${printCondition(piece.when)}]`, piece.inside);
      case 'repeat':
        return block('repeat[until it is right]', piece.inside);
      case 'if':
        return block(`if[${label()}]`, piece.inside);
      case 'either':
        return piece.ways
          .map((way, i) => block(`${i === 0 ? 'either' : 'or'}[${label()}]`, way))
          .join('\n\n');
      case 'perform':
        return `::perform{procedure=other${whenText(piece.when)}}`;
    }
  }
  const block = (opening: string, inside: readonly Piece[]): string =>
    `::::${opening}\n\n${write(inside)}\n\n::::`;
  return `${write(pieces)}\n`;
}

function stepText(acts: readonly Act[], when: Condition | undefined): string {
  const words = acts.map(
    ({ verb, item, attributes, when: own }) =>
      `:${verb}{item=${item}${attributes === '' ? '' : ` ${attributes}`}${whenText(own)}}`,
  );
  const facts = when === undefined ? '' : `\n   ::step{${whenText(when).trim()}}`;
  return `1. ${words.length === 0 ? 'Look' : words.join('. ')}.${facts}`;
}

const whenText = (when: Condition | undefined): string =>
  when === undefined ? '' : ` when="${printCondition(when)}"`;

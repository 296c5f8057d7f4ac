import { diffArrays } from 'diff';
import { compareText } from '../source/index.ts';
import { actionKey, actionPrint } from './action-facts.ts';
import type { Names } from './names.ts';
import { pairAlike, shared, wordList } from './pair-alike.ts';
import type { Pairing } from './pair-entries.ts';
import type { Piece } from './piece.ts';

export interface PairedPieces extends Pairing<Piece> {
  /** Of the pairs, the steps that have another place among the steps: as few as can be. */
  readonly moved: ReadonlySet<readonly [Piece, Piece]>;
}

/** A piece as it is compared: in the ids of the manual after. */
interface Read {
  readonly piece: Piece;
  readonly at: number;
  readonly print: string;
  readonly id: string | undefined;
  readonly keys: readonly string[];
  readonly words: readonly string[];
}

/** How alike two steps must be to be one step that changed. */
const alikeEnough = 0.4;

/** Pairs the pieces of two texts of a procedure: the same words and actions, the same id, or much the same. */
export function pairPieces(
  before: readonly Piece[],
  after: readonly Piece[],
  names: Names,
  same: Names,
): PairedPieces {
  const read = (pieces: readonly Piece[], of: Names): Read[] =>
    pieces.map((piece, at) => readPiece(piece, at, of));
  const [old, now] = [read(before, names), read(after, same)];
  // The longest common order may be found in several ways. Which one is taken must not depend on which text is the older.
  const isTurned = compareText(printOf(old), printOf(now)) > 0;
  const { pairs, gone, fresh } = isTurned ? pairRead(now, old) : pairRead(old, now);
  const moved = movedOf(pairs);
  const turn = isTurned
    ? ([a, b]: readonly [Read, Read]) => [b.piece, a.piece] as const
    : ([a, b]: readonly [Read, Read]) => [a.piece, b.piece] as const;
  const told = pairs.map((pair) => ({ pair: turn(pair), isMoved: moved.has(pair) }));
  const pieces = (all: readonly Read[]): Piece[] => all.map(({ piece }) => piece);
  return {
    pairs: told.map(({ pair }) => pair),
    moved: new Set(told.flatMap(({ pair, isMoved }) => (isMoved ? [pair] : []))),
    gone: pieces(isTurned ? fresh : gone),
    fresh: pieces(isTurned ? gone : fresh),
  };
}

const printOf = (all: readonly Read[]): string => all.map(({ print }) => print).join('\n');

function readPiece(piece: Piece, at: number, names: Names): Read {
  const { actions, performs, reverses, hazards, words, section, step, kind } = piece;
  const done = actions.flatMap(({ of }) => [actionKey(of, names), names.item(of.item.id)]);
  const run = performs.map(({ of }) => `perform ${names.procedure(of.procedure.id)}`);
  const back = reverses.map(() => 'reverse');
  const warned = hazards.flatMap(({ of }) => (of.of === undefined ? [] : [names.item(of.of.id)]));
  const acts = actions.map((action) => actionPrint(action, names));
  return {
    piece,
    at,
    print: JSON.stringify([
      kind === 'beside' ? names.section(section.id) : '',
      words,
      acts,
      run,
      warned,
    ]),
    id: kind === 'beside' ? `section ${names.section(section.id)}` : stepId(step?.id?.id, names),
    keys: [...done, ...run, ...back],
    words: wordList(words.join(' ')),
  };
}

const stepId = (id: string | undefined, names: Names): string | undefined =>
  id === undefined ? undefined : `step ${names.step(id)}`;

type ReadPairs = Pairing<Read>;

function pairRead(before: readonly Read[], after: readonly Read[]): ReadPairs {
  const named = pairAlike(before, after, sameId, 1);
  const inOrder = pairInOrder(named.gone, named.fresh);
  const alike = pairAlike(inOrder.gone, inOrder.fresh, likeness, alikeEnough);
  return { ...alike, pairs: [...named.pairs, ...inOrder.pairs, ...alike.pairs] };
}

const sameId = (a: Read, b: Read): number => (a.id !== undefined && a.id === b.id ? 1 : 0);

/** What is the same word for word, in the order that leaves the fewest out. */
function pairInOrder(before: readonly Read[], after: readonly Read[]): ReadPairs {
  const pairs: (readonly [Read, Read])[] = [];
  const [gone, fresh] = [new Set(before), new Set(after)];
  let [i, j] = [0, 0];
  const parts = diffArrays(
    before.map(({ print }) => print),
    after.map(({ print }) => print),
  );
  for (const { added, removed, count } of parts) {
    for (let n = 0; n < count; n += 1) {
      const [one, other] = [before[i], after[j]];
      if (!added) i += 1;
      if (!removed) j += 1;
      if (added || removed || one === undefined || other === undefined) continue;
      pairs.push([one, other]);
      gone.delete(one);
      fresh.delete(other);
    }
  }
  return { pairs, gone: [...gone], fresh: [...fresh] };
}

/** What is done counts more than how it is said; the same words alone are enough where nothing is done. */
function likeness(a: Read, b: Read): number {
  if (a.piece.kind !== 'step' || b.piece.kind !== 'step') return 0;
  if (a.print === b.print) return 1;
  const words = shared(a.words, b.words);
  if (a.keys.length + b.keys.length === 0) return words;
  return 0.6 * shared(a.keys, b.keys) + 0.4 * words;
}

/** The pairs of steps that are out of the longest order that both texts have in common. */
function movedOf(pairs: ReadPairs['pairs']): ReadonlySet<readonly [Read, Read]> {
  const steps = pairs.filter(([{ piece }]) => piece.kind === 'step');
  const first = steps.toSorted(([a], [b]) => a.at - b.at);
  const second = steps.toSorted(([, a], [, b]) => a.at - b.at);
  const out = diffArrays(first, second).filter(({ removed }) => removed);
  return new Set(out.flatMap(({ value }) => value));
}

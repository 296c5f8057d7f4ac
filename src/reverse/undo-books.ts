import type { Space, VariantSet } from '../applicability/index.ts';
import type { Account, Counts, Entry, Run } from '../ledger/index.ts';
import { sameCounts } from '../ledger/index.ts';
import { inSoundOrder } from './sound-order.ts';
import { type Undo, undoAccount } from './undo.ts';

/** Where an account should be, by variants; the moves that count; the accounts that are left alone. */
export interface Aim {
  readonly expected: (account: Account) => Counts;
  readonly isOfInterest: (entry: Entry) => boolean;
  readonly leftAlone: (account: Account) => boolean;
  /** True to bring pieces back in the lots in which they went. */
  readonly inLots: boolean;
}

/** An item that went away in more different ways than this is left to the author: nobody could read the steps. */
const mostStories = 256;

/** Everything that brings a run's books back to what is expected, in the order of work: last out, first in, as far as the catalogue allows. */
export function undoBooks(run: Run, aim: Aim): readonly Undo[] {
  const { space } = run.setting;
  const undos = [...run.journal.accounts()].flatMap((account) =>
    account.aspect === 'pressure' || aim.leftAlone(account) ? [] : undoOne(run, account, aim),
  );
  return inSoundOrder(fillsAfterClosing(merged(undos, space)).toSorted(inTurn), run);
}

function undoOne(run: Run, account: Account, aim: Aim): readonly Undo[] {
  const expected = aim.expected(account);
  const wrong = run.books.where(account, run.scope, (counts) => !sameCounts(counts, expected));
  return wrong.flatMap(({ set, value }) => {
    const story = run.journal.entries(account, set).filter(aim.isOfInterest);
    if (story.length === 0) return [];
    return sameStory(run.setting.space, set, story).flatMap(
      (part) => undoAccount(account, value, expected, part.story, part.set, aim.inLots) ?? [],
    );
  });
}

/** Parts of a set in each of which every entry holds either for all or for none; none where they are too many. */
function sameStory(
  space: Space,
  set: VariantSet,
  story: readonly Entry[],
): readonly { set: VariantSet; story: readonly Entry[] }[] {
  let parts: { set: VariantSet; story: readonly Entry[] }[] = [{ set, story: [] }];
  for (const entry of story) {
    parts = parts.flatMap((part) => {
      const inside = space.and(part.set, entry.under);
      const outside = space.minus(part.set, entry.under);
      return [
        ...(inside === space.none ? [] : [{ set: inside, story: [...part.story, entry] }]),
        ...(outside === space.none ? [] : [{ set: outside, story: part.story }]),
      ];
    });
    // Each branch of its own can double them.
    if (parts.length > mostStories) return [];
  }
  return parts.filter((part) => part.story.length > 0);
}

/** The same undoing of the same move in several sets of variants is one. */
function merged(undos: readonly Undo[], space: Space): readonly Undo[] {
  const byKey = new Map<string, Undo>();
  for (const undo of undos) {
    const { account, verb, qty, isNew, to, entry, rank } = undo;
    const key = [account.item.id, account.instance, verb, qty, isNew, to, entry.order, rank].join();
    const known = byKey.get(key);
    byKey.set(
      key,
      known === undefined ? undo : { ...known, under: space.or(known.under, undo.under) },
    );
  }
  return [...byKey.values()];
}

/** Last out, first in; energy comes back when all else is done. */
function inTurn(a: Undo, b: Undo): number {
  const energy = Number(a.verb === 'restore') - Number(b.verb === 'restore');
  return energy || b.turn - a.turn || a.rank - b.rank;
}

/** A circuit is filled once its drain points and hoses are shut: the fill takes the turn of the last of them. */
function fillsAfterClosing(undos: readonly Undo[]): readonly Undo[] {
  return undos.map((undo) => {
    const circuit = undo.account.item;
    if (circuit.kind !== 'circuit') return undo;
    const closing = undos.filter(
      ({ account: { item } }) =>
        circuit.drain.includes(item.id) ||
        (item.kind === 'connection' && item.circuit === circuit.id),
    );
    const last = Math.min(undo.turn, ...closing.map(({ turn }) => turn));
    // Between the turn of the last closing and the next one.
    return last === undo.turn && closing.length === 0 ? undo : { ...undo, turn: last - 0.5 };
  });
}

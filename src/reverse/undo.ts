import type { Verb } from '../../schemas/directives.ts';
import type { VariantSet } from '../applicability/index.ts';
import type { StatefulItem } from '../catalogue/index.ts';
import type { Account, Counts, Entry } from '../ledger/index.ts';

/** One action that brings pieces of an account back, and when it is its turn. */
export interface Undo {
  readonly account: Account;
  readonly verb: Verb;
  /** Pieces; undefined for all that are left to do. */
  readonly qty: number | undefined;
  readonly isNew: boolean;
  readonly to: string | undefined;
  readonly under: VariantSet;
  /** The move it undoes. */
  readonly entry: Entry;
  /** Its turn: undoing goes from the last move to the first, the highest turn to the lowest. */
  readonly turn: number;
  /** Among those of one turn, the lowest rank first. */
  readonly rank: number;
}

/**
 * The actions that bring an account from `now` back to `then`, for variants in which it has the same story:
 * its moves away, oldest first. `inLots` brings pieces back in the lots in which they went. Undefined where no action can, such as for a piece that should be out.
 */
export function undoAccount(
  account: Account,
  now: Counts,
  then: Counts,
  story: readonly Entry[],
  under: VariantSet,
  inLots: boolean,
): readonly Undo[] | undefined {
  const lacking = account.states.map((_, i) => (now[i] ?? 0) - (then[i] ?? 0));
  // Only the way home is known: pieces may be missing at home, and nowhere else.
  if (lacking.some((n, i) => i > 0 && n < 0)) return undefined;
  const away = new Map(account.states.map((state, i) => [state, Math.max(0, lacking[i] ?? 0)]));
  const make = undoer(account, under, story, inLots);
  switch (account.item.kind) {
    case 'fastener':
      return undoFastener(account.item, away, story, make);
    case 'part':
      return undoPart(away, story, make);
    case 'connection':
      return undoConnection(account.item, away, story, make);
    case 'circuit':
      return undoCircuit(account.item, away, make);
    case 'energy':
      return make.lots('restore', ['isolated'], away.get('isolated') ?? 0, 0);
    case 'aid':
      return make.lots('withdraw', ['fitted'], away.get('fitted') ?? 0, 0);
    case 'control': {
      const [home = ''] = account.states;
      const moved = account.states.slice(1);
      const count = moved.reduce((sum, state) => sum + (away.get(state) ?? 0), 0);
      return make.first('set', count, { to: home });
    }
  }
}

function undoFastener(
  item: StatefulItem & { kind: 'fastener' },
  away: ReadonlyMap<string, number>,
  story: readonly Entry[],
  make: Undoer,
): readonly Undo[] {
  const gone = away.get('gone') ?? 0;
  const out = gone + (away.get('out') ?? 0);
  const back = make.lots('install', ['out', 'gone'], out, 0, gone);
  const unfinished = out + (away.get('loose') ?? 0) + (away.get('snug') ?? 0);
  const isDone = unfinished === 0 || (item.tightness === 'hand-tight' && unfinished === out);
  if (isDone) return back;
  // What was loosened before the part came off is tightened after the part is back, where it was loosened;
  // what was loosened when others were out already, after those are back.
  const loosened = story.find((entry) => entry.to === 'loose');
  const atInstall = back.reduce<Entry | undefined>(
    (first, { entry }) => earlier(first, entry),
    undefined,
  );
  const at = loosened === undefined ? (atInstall ?? story.at(-1)) : earlier(atInstall, loosened);
  const verb = item.torque === undefined ? 'tighten' : 'torque';
  return at === undefined ? back : [...back, make.one(verb, at, 1)];
}

function undoPart(
  away: ReadonlyMap<string, number>,
  _story: readonly Entry[],
  make: Undoer,
): readonly Undo[] {
  const gone = away.get('gone') ?? 0;
  return [
    ...make.lots('return', ['aside'], away.get('aside') ?? 0, 0),
    ...make.lots('install', ['out', 'gone'], gone + (away.get('out') ?? 0), 0, gone),
  ];
}

function undoConnection(
  item: StatefulItem & { kind: 'connection' },
  away: ReadonlyMap<string, number>,
  story: readonly Entry[],
  make: Undoer,
): readonly Undo[] {
  const capped = away.get('capped') ?? 0;
  const open = capped + (away.get('open') ?? 0);
  const back = [
    ...make.lots('uncap', ['capped'], capped, 0),
    ...make.lots('connect', ['open'], open, 1),
  ];
  const unfinished = open + (away.get('joined') ?? 0);
  const at = back.at(-1)?.entry ?? story.at(-1);
  if (item.torque === undefined || unfinished === 0 || at === undefined) return back;
  return [...back, make.one('torque', at, 2)];
}

function undoCircuit(
  item: StatefulItem & { kind: 'circuit' },
  away: ReadonlyMap<string, number>,
  make: Undoer,
): readonly Undo[] {
  const drained = (away.get('drained') ?? 0) + (away.get('part-drained') ?? 0);
  const needsBleeding = item.bleed !== undefined && drained + (away.get('filled') ?? 0) > 0;
  return [
    ...make.first('fill', drained, {}),
    ...make.first('bleed', needsBleeding ? 1 : 0, {}).map((undo) => ({ ...undo, rank: 1 })),
  ];
}

interface Undoer {
  /** Pieces come back in the lots in which they went, the last lot first. */
  lots(
    verb: Verb,
    states: readonly string[],
    count: number,
    rank: number,
    asNew?: number,
  ): readonly Undo[];
  /** All at once, where the first of the moves was. */
  first(verb: Verb, count: number, how: { to?: string }): readonly Undo[];
  one(verb: Verb, entry: Entry, rank: number): Undo;
}

function undoer(
  account: Account,
  under: VariantSet,
  story: readonly Entry[],
  inLots: boolean,
): Undoer {
  const make = (verb: Verb, entry: Entry, rank: number, how: Partial<Undo> = {}): Undo => ({
    account,
    verb,
    qty: undefined,
    isNew: false,
    to: undefined,
    under,
    entry,
    turn: entry.order,
    rank,
    ...how,
  });
  return {
    one: make,
    first: (verb, count, how) => {
      const [entry] = story;
      return count === 0 || entry === undefined ? [] : [make(verb, entry, 0, how)];
    },
    lots: (verb, states, count, rank, asNew = 0) => {
      const undos: Undo[] = [];
      let left = count;
      let fresh = asNew;
      for (const entry of story.toReversed()) {
        // Throwing a piece away is no move of its own: it went when it was taken out.
        const isMove =
          states.includes(entry.to) && (entry.verb !== 'discard' || !hasRemoval(story));
        if (left === 0 || !isMove) continue;
        const lot = Math.min(left, entry.moved);
        const isNew = fresh > 0;
        fresh -= Math.min(fresh, lot);
        left -= lot;
        undos.push(make(verb, entry, rank, { qty: lot === account.size ? undefined : lot, isNew }));
      }
      const [entry] = story;
      if (left > 0 && entry !== undefined) {
        undos.push(
          make(verb, entry, rank, {
            qty: left === account.size ? undefined : left,
            isNew: fresh > 0,
          }),
        );
      }
      return inLots ? undos : together(undos, count, account);
    },
  };
}

/** All pieces at once, where the first of them went. */
function together(lots: readonly Undo[], count: number, account: Account): readonly Undo[] {
  const last = lots.at(-1);
  if (last === undefined) return [];
  const isNew = lots.some((lot) => lot.isNew);
  return [{ ...last, isNew, qty: count === account.size ? undefined : count }];
}

const hasRemoval = (story: readonly Entry[]): boolean =>
  story.some((entry) => entry.verb !== 'discard' && (entry.to === 'out' || entry.to === 'gone'));

const earlier = (a: Entry | undefined, b: Entry): Entry =>
  a === undefined || b.order < a.order ? b : a;
